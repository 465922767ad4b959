"""The resources, one small module each: a view finds documents, its forms show them."""

from spreadwright.rest.resources import Resources
from spreadwright.rest.views import (
    benches,
    booklet,
    checks,
    colourways,
    cuts,
    home,
    paper_sets,
    placement,
    plans,
    preview,
    recipes,
    schemas,
    swatches,
    tolerances,
)

BLUEPRINTS: tuple[Resources, ...] = (
    home.blueprint,
    recipes.blueprint,
    preview.blueprint,
    cuts.blueprint,
    placement.blueprint,
    tolerances.blueprint,
    booklet.blueprint,
    colourways.blueprint,
    paper_sets.blueprint,
    swatches.blueprint,
    benches.blueprint,
    checks.blueprint,
    plans.blueprint,
    schemas.blueprint,
)
"""A new resource is listed here, and nowhere else."""

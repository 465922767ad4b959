"""The resources, one small module each: a view finds documents, its forms show them."""

from spreadwright.rest.resources import Resources
from spreadwright.rest.views import (
    benches,
    booklet,
    checks,
    colourways,
    cut_paths,
    cuts,
    home,
    match,
    paper_sets,
    photos,
    pieces,
    placement,
    plans,
    preview,
    recipes,
    schemas,
    swatches,
    templates,
    tolerances,
)

BLUEPRINTS: tuple[Resources, ...] = (
    home.blueprint,
    recipes.blueprint,
    preview.blueprint,
    cuts.blueprint,
    cut_paths.blueprint,
    pieces.blueprint,
    placement.blueprint,
    photos.blueprint,
    templates.blueprint,
    tolerances.blueprint,
    booklet.blueprint,
    colourways.blueprint,
    paper_sets.blueprint,
    swatches.blueprint,
    benches.blueprint,
    checks.blueprint,
    plans.blueprint,
    match.blueprint,
    schemas.blueprint,
)
"""A new resource is listed here, and nowhere else."""

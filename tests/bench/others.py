"""General libraries on the same puzzles, for comparison; both are only needed here."""

import time
from itertools import product

from bench.dissections import SHEET
from bench.jobs import Rect


def rectpack_fits(pieces: list[Rect], sheets: int) -> bool:
    """Whether any of rectpack's guillotine modes, with any order, cuts all pieces from the sheets."""
    import rectpack
    from rectpack import guillotine

    names = [
        f"Guillotine{fit}{split}"
        for fit, split in product(("Bssf", "Blsf", "Baf"), ("Sas", "Las", "Slas", "Llas", "Maxas", "Minas"))
    ]
    orders = [getattr(rectpack, f"SORT_{o}") for o in ("AREA", "PERI", "DIFF", "SSIDE", "LSIDE", "RATIO", "NONE")]
    for name, order in product(names, orders):
        packer = rectpack.newPacker(
            mode=rectpack.PackingMode.Offline,
            bin_algo=rectpack.PackingBin.BBF,
            pack_algo=getattr(guillotine, name),
            sort_algo=order,
            rotation=True,
        )
        for piece in pieces:
            packer.add_rect(*piece)
        packer.add_bin(SHEET, SHEET, count=sheets)
        packer.pack()
        if len(packer.rect_list()) == len(pieces):
            return True
    return False


def cp_sat_time(pieces: list[Rect], seconds: float) -> float | None:
    """Processor seconds of CP-SAT to lay pieces on one sheet without overlap, cuts left aside; None if more."""
    from ortools.sat.python import cp_model

    model = cp_model.CpModel()
    across, down = [], []
    for w, h in pieces:
        x, y = model.new_int_var(0, SHEET, ""), model.new_int_var(0, SHEET, "")
        wide = model.new_int_var_from_domain(cp_model.Domain.from_values([w, h]), "")
        high = model.new_int_var_from_domain(cp_model.Domain.from_values([w, h]), "")
        model.add(wide + high == w + h)
        right, bottom = model.new_int_var(0, SHEET, ""), model.new_int_var(0, SHEET, "")
        across.append(model.new_interval_var(x, wide, right, ""))
        down.append(model.new_interval_var(y, high, bottom, ""))
    model.add_no_overlap_2d(across, down)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.max_time_in_seconds = seconds
    begin = time.process_time()
    status = solver.solve(model)
    took = time.process_time() - begin
    return took if status in (cp_model.OPTIMAL, cp_model.FEASIBLE) else None

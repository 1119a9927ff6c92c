import { type Cell, oneOf } from "#db/book/cell.ts";
import { UNITS, type Unit } from "#engine/measure/units.ts";

export const unit: Cell<Unit> = oneOf(UNITS);

/** A unit, or `top`: filled up. */
export const unitOrTop: Cell<Unit | "top"> = oneOf([...UNITS, "top"]);

/** A unit, or `serve`: a whole drink. */
export const unitOrServe: Cell<Unit | "serve"> = oneOf([...UNITS, "serve"]);

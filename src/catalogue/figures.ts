import { unpackFigures, unpackSparse } from "./numbers.js";
import type { Compiled, PackedFigure } from "./packed.js";

const values = new WeakMap<PackedFigure, Float64Array>();
const sources = new WeakMap<PackedFigure, Int32Array>();

/** One figure of every ingredient, NaN where not measured; unpacked when first asked for. */
export function figuresOf(compiled: Compiled, name: string): Float64Array {
  const packed = compiled.figures[name] as PackedFigure;
  let list = values.get(packed);
  if (!list) values.set(packed, (list = unpackFigures(packed.v, compiled.size)));
  return list;
}
/** Where each comes from, coded as the packed figure says. */
export function sourcesOf(compiled: Compiled, name: string): Int32Array {
  const packed = compiled.figures[name] as PackedFigure;
  let list = sources.get(packed);
  if (!list) sources.set(packed, (list = unpackSparse(packed.s, compiled.size)));
  return list;
}

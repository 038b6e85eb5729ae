import { ML_PER_CUP, ML_PER_TBSP, ML_PER_TSP } from "../quantity/index.js";
import type { Ingredient, Store } from "../catalogue/index.js";
import { AT, WIDTH, type Axis } from "./axes.js";

/** g NaCl per mg sodium: 58.44 / 22.99 / 1000 (molar masses). */
export const SALT_PER_SODIUM_MG = 58.44 / 22.99 / 1000;
/** Sweetness by weight against sucrose in solution: fructose 1.2, glucose 0.74, maltose 0.33, lactose 0.16 (docs/method, sweetness). */
const SWEETNESS: readonly (readonly [figure: string, factor: number])[] = [
  ["sucrose", 1],
  ["fructose", 1.2],
  ["glucose", 0.74],
  ["maltose", 0.33],
  ["lactose", 0.16],
];
/** GMP against IMP in the umami equation (docs/method, umami). */
const GMP = 2.3;
const ML: Readonly<Record<string, number>> = { tsp: ML_PER_TSP, tbsp: ML_PER_TBSP, cup: ML_PER_CUP };

/** g/ml from the ingredient's own spoon or cup, the plain measure before a labelled one; NaN when it has none. */
export function densityOf(store: Store, i: Ingredient): number {
  const volumes = i.measures.filter((m) => m.unit in ML);
  const measure = volumes.find((m) => m.label === "") ?? volumes[0];
  if (measure) return measure.grams / (ML[measure.unit] as number);
  return store.columns["density"]?.[i.index] ?? Number.NaN;
}

function per100(store: Store, i: Ingredient): (name: string) => number {
  return (name) => store.columns[name]?.[i.index] ?? Number.NaN;
}

/** Sucrose equivalents, g per 100 g: by hand, else from the single sugars, else from all sugars together. */
function sweetness(i: Ingredient, f: (name: string) => number): number {
  const given = f("sweetness");
  if (!Number.isNaN(given)) return given * 100;
  let total = 0;
  let known = 0;
  for (const [name, factor] of SWEETNESS) {
    const grams = f(name);
    if (Number.isNaN(grams)) continue;
    known += grams;
    total += grams * factor;
  }
  const sugars = f("sugars");
  if (known > 0 && (Number.isNaN(sugars) || known >= 0.7 * sugars)) return total;
  if (!Number.isNaN(sugars)) {
    // Milk's own sugar comes with its protein (4.8 g lactose to 3.3 g in whole milk, USDA SR28); what is over was added.
    const milk = i.origin.has("dairy") && !i.tags.has("low lactose") ? Math.min(sugars, 1.45 * (f("protein") || 0)) : 0;
    return 0.16 * milk + (i.kinds.includes("sweetener") ? 1 : 0.9) * (sugars - milk);
  }
  // A food that is nearly all water and protein cannot hold sugar worth tasting.
  const carbohydrate = f("carbohydrate");
  return carbohydrate < 1 ? 0 : Number.NaN;
}

function starch(f: (name: string) => number): number {
  const given = f("starch");
  if (!Number.isNaN(given)) return given;
  const rest = f("carbohydrate") - f("sugars") - f("fibre");
  return Number.isNaN(rest) ? (f("carbohydrate") < 1 ? 0 : Number.NaN) : Math.max(0, rest);
}

/** Of two figures what was measured; NaN only when neither was. */
const sumKnown = (a: number, b: number): number => (Number.isNaN(a) ? b : Number.isNaN(b) ? a : a + b);

function fill(store: Store, i: Ingredient, out: Float64Array, base: number): void {
  const f = per100(store, i);
  const set = (axis: Axis, value: number): void => {
    out[base + AT[axis]] = value;
  };
  const mass = i.ready?.yield ?? 1;
  const salt = f("salt");
  const ownSalt = (Number.isNaN(salt) ? f("sodium") * SALT_PER_SODIUM_MG : salt) / 100;
  const water = f("water") / 100;
  const nucleotide = sumKnown(f("inosinate"), GMP * f("guanylate")) / 100_000;
  const density = densityOf(store, i);
  set("mass", mass);
  set("weight", 1);
  set("served", mass * (i.cooked ?? 1));
  // Soaking takes water up; draining a can loses brine, not the food's own water.
  set("water", mass >= 1 ? water + (mass - 1) : water * mass);
  set("dry weight", Number.isNaN(water) ? Number.NaN : (1 - water) * Math.min(1, mass));
  const drained = Math.min(1, mass);
  set("fat", (f("fat") / 100) * drained);
  set("protein", (f("protein") / 100) * drained);
  set("starch", (starch(f) / 100) * drained);
  set("sweetness", (sweetness(i, f) / 100) * drained);
  set("salt", i.ready?.salt === undefined ? ownSalt * drained : (i.ready.salt / 100) * mass);
  set("acid", f("acid") / 100);
  set("glutamate", f("free glutamate") / 100_000);
  set("nucleotide", Number.isNaN(nucleotide) && !Number.isNaN(f("free glutamate")) ? 0 : nucleotide);
  set("pungency", Number.isNaN(f("pungency")) ? (i.pungencyKind === undefined ? 0 : Number.NaN) : f("pungency"));
  set("bitter", i.flavour["bitter"] ?? 0);
  set("thickening", f("thickening"));
  set("lift", f("carbon dioxide") / 100);
  set("neutralising", f("neutralising value") / 100);
  set("alcohol", (Number.isNaN(f("alcohol")) ? 0 : f("alcohol")) / 100);
  set("gel", f("gel"));
  set("aroma", f("aroma strength"));
  set("binding", f("binding"));
  set("colour", f("colour strength"));
  set("volume", Number.isNaN(density) ? Number.NaN : 1 / density);
}

const matrices = new WeakMap<Store, Float64Array>();
/** Doses per gram of every ingredient of the catalogue, row by row ({@link WIDTH} wide). Made once, read by index. */
export function doseMatrix(store: Store): Float64Array {
  let matrix = matrices.get(store);
  if (!matrix) {
    matrix = new Float64Array(store.size * WIDTH);
    for (const i of store.ingredients) fill(store, i, matrix, i.index * WIDTH);
    matrices.set(store, matrix);
  }
  return matrix;
}

/** One dose of one ingredient per gram as sold; NaN when it was not measured. */
export function dose(store: Store, i: Ingredient, axis: Axis): number {
  return doseMatrix(store)[i.index * WIDTH + AT[axis]] as number;
}

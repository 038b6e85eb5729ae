import { amountText, measureText, type Quantity, roundTo, type Unit } from "../quantity/index.js";
import type { Measure } from "../types.js";
import type { Weight } from "./weigh.js";

/** The measure as the text had it, in the public units: "2-3 cloves", "2 (400 g) cans", "4 oz". */
export function measureAsRead(q: Quantity, w: Weight): Measure {
  // Fluid ounces are told in cups where they make even ones, else in tablespoons
  const cups = q.unit?.name === "us fl oz" && Number.isInteger(q.low * 0.5) && Number.isInteger(q.high * 0.5);
  const scale = cups ? 1 / 8 : (q.unit?.scale ?? 1);
  const unit = cups ? "cup" : (q.unit?.id ?? w.unit);
  const roundedBy = w.byMeasure === undefined ? 0 : roundTo(w.byMeasure - w.grams, 1);
  const amount = roundTo(q.value * scale, 4);
  const range = q.low === q.high ? undefined : ([q.low * scale, q.high * scale] as const);
  const label = q.unit === undefined || q.unit.dimension === "count" ? w.label : "";
  const second = (q.also ?? q.each)?.unit;
  const beside = second === undefined || second.dimension === "length" ? {} : { beside: second.id };
  if (q.each === undefined || q.each.unit === undefined)
    return { amount, unit, text: sized(measureText(q.value * scale, unit, label, range), q), roundedBy, ...beside };
  const size = sizeText(q.each.value, q.each.unit);
  const noun = measureText(q.value, unit, q.unit?.label ?? "", range);
  const space = noun.lastIndexOf(" ");
  // "2 cans" → "2 (400 g) cans"; plain pieces have no noun: "2 (6 oz)"
  const named = unit === "piece" && (q.unit?.label ?? "") === "" ? -1 : space;
  const text =
    named < 0
      ? `${noun} (${size})${q.each.unit.dimension === "length" ? " piece" : ""}`
      : `${noun.slice(0, named)} (${size})${noun.slice(named)}`;
  return { amount, unit, text, roundedBy, ...beside };
}

/** What one holds: in its own unit when that is a public one, else in ml ("14 fl oz" → "414 ml") or inches. */
function sizeText(value: number, unit: Unit): string {
  if (unit.dimension === "length") return `${amountText(value, unit.name === "inch" ? "piece" : "ml")} ${unit.name}`;
  if (unit.scale === 1 || unit.dimension === "mass") return `${amountText(value * unit.scale, unit.id)} ${unit.id}`;
  return `${amountText(roundTo(value * unit.factor, 0), "ml")} ml`;
}

/** "2 large handfuls": the size word stands before the noun it was said of. */
function sized(text: string, q: Quantity): string {
  if (q.size === "" || q.unit?.dimension !== "count" || text.includes(q.size)) return text;
  const space = text.lastIndexOf(" ");
  return space < 0 ? text : `${text.slice(0, space)} ${q.size}${text.slice(space)}`;
}

import { isDash, isDigit, isLetter, skipSpace } from "../quantity/index.js";
import type { Temperature } from "./types.js";

/** Gas marks in degrees Celsius: common practice on British cookers. */
const GAS: Readonly<Record<string, number>> = {
  1: 140,
  2: 150,
  3: 170,
  4: 180,
  5: 190,
  6: 200,
  7: 220,
  8: 230,
  9: 240,
};
const SIGNS = "°º˚";
/** A plain number of degrees above this is Fahrenheit: no kitchen oven passes 300 °C. */
const TELLS_F = 300;

interface Hit {
  value: number;
  scale: "C" | "F" | undefined;
  start: number;
  end: number;
}

function number(text: string, at: number): { value: number; end: number } | undefined {
  let p = at;
  while (isDigit(text[p])) p++;
  if (p === at || p - at > 3) return undefined;
  return { value: Number(text.slice(at, p)), end: p };
}

function word(text: string, at: number): { text: string; end: number } {
  let p = at;
  while (isLetter(text[p])) p++;
  return { text: text.slice(at, p).toLowerCase(), end: p };
}

/** "180 °C", "350F", "350 degrees Fahrenheit", "75-80 °C" (the upper), "180 degrees". */
function hit(text: string, at: number): Hit | undefined {
  const n = number(text, at);
  if (n === undefined) return undefined;
  let { value, end } = n;
  let p = skipSpace(text, end);
  if (isDash(text[p])) {
    const second = number(text, skipSpace(text, p + 1));
    if (second !== undefined && second.value > value) ({ value, end } = second);
  }
  p = skipSpace(text, end);
  let sign = false;
  if (SIGNS.includes(text[p] ?? "\0")) {
    sign = true;
    p = skipSpace(text, p + 1);
    end = p;
  } else {
    const w = word(text, p);
    if (w.text === "degrees" || w.text === "degree" || w.text === "deg") {
      sign = true;
      end = w.end;
      p = skipSpace(text, text[w.end] === "." ? w.end + 1 : w.end);
    }
  }
  const w = word(text, p);
  const scale = ["c", "celsius", "centigrade"].includes(w.text)
    ? "C"
    : ["f", "fahrenheit"].includes(w.text)
      ? "F"
      : undefined;
  if (scale !== undefined && (sign || value >= 30)) return { value, scale, start: at, end: w.end };
  return sign ? { value, scale: undefined, start: at, end } : undefined;
}

/** The temperatures of a sentence; one said twice ("350 °F (180 °C)", "gas mark 4") is one. */
export function temperaturesIn(sentence: string): Temperature[] {
  const out: (Temperature & { readonly end: number })[] = [];
  const lower = sentence.toLowerCase();
  let p = 0;
  while (p < sentence.length) {
    if (
      (isDigit(sentence[p]) && !isDigit(sentence[p - 1]) && sentence[p - 1] !== "." && sentence[p - 1] !== "/") ||
      (sentence[p - 1] === "/" && isDigit(sentence[p]))
    ) {
      const h = hit(sentence, p);
      if (h !== undefined) {
        const guessed = h.scale === undefined;
        const scale = h.scale ?? (h.value > TELLS_F ? "F" : "C");
        const celsius = scale === "C" ? h.value : Math.round(((h.value - 32) * 5) / 9);
        const fahrenheit = scale === "F" ? h.value : Math.round((h.value * 9) / 5 + 32);
        const last = out.at(-1);
        const fan = word(sentence, skipSpace(sentence, h.end)).text === "fan";
        if (last === undefined || fan || h.start - last.end > 12 || Math.abs(last.celsius - celsius) > 12)
          out.push({
            celsius,
            fahrenheit,
            of: fan ? "fan oven" : ofWhat(lower),
            ...(guessed ? { guessed: true as const } : {}),
            text: sentence.slice(h.start, h.end).trim(),
            end: h.end,
          });

        // said in both scales: each number as it is written
        else
          out[out.length - 1] = {
            ...last,
            ...(h.scale === "C" ? { celsius } : h.scale === "F" ? { fahrenheit } : {}),
            end: h.end,
          };
        p = h.end;
        continue;
      }
    }
    if (
      (sentence[p] === "g" || sentence[p] === "G") &&
      !isLetter(sentence[p - 1]) &&
      word(sentence, p).text === "gas"
    ) {
      let q = skipSpace(sentence, p + 3);
      if (word(sentence, q).text === "mark") q = skipSpace(sentence, q + 4);
      const mark = number(sentence, q);
      const celsius = mark === undefined ? undefined : GAS[String(mark.value)];
      if (mark !== undefined && celsius !== undefined && out.length === 0)
        out.push({
          celsius,
          fahrenheit: Math.round((celsius * 9) / 5 + 32),
          of: "oven",
          text: sentence.slice(p, mark.end),
          end: mark.end,
        });
    }
    p++;
  }
  return out.map(({ end: _end, ...t }) => t);
}

function ofWhat(lower: string): Temperature["of"] {
  const says = (...words: string[]): boolean => words.some((w) => lower.includes(w));
  if (
    says(
      "internal",
      "reaches",
      "registers",
      "thermometer",
      "thickest",
      "in the middle",
      "in the center",
      "in the centre",
      "inside",
    )
  )
    return "inside";
  if (says("oil", "deep-fry", "deep fry")) return "oil";
  return says("oven", "bake", "roast", "preheat") ? "oven" : "not said";
}

import { isSteadfareError, judgeSwap, swapsFor, type Avoid, type Catalogue, type SwapRequest } from "../index.js";
import { write } from "./bulk.js";
import { linesIn } from "./bulk-lines.js";
import { open } from "./open.js";
import { listed, number, UsageError, type Values } from "./options.js";
import { adviceText, judgementText } from "./text.js";

/** A word to avoid may be an allergen, a diet or a food; the first list that knows it takes it. */
export function avoidOf(c: Catalogue, words: readonly string[] | undefined): Avoid | undefined {
  if (!words || words.length === 0) return undefined;
  const allergens: string[] = [];
  const diets: string[] = [];
  const foods: string[] = [];
  const knows = (avoid: Avoid): boolean => {
    try {
      swapsFor(c, { missing: "1 tsp salt", avoid, limit: 1 });
      return true;
    } catch (e) {
      if (isSteadfareError(e, "unknown term") || isSteadfareError(e, "unknown food")) return false;
      throw e;
    }
  };
  for (const word of words) {
    if (knows({ allergens: [word] })) allergens.push(word);
    else if (knows({ diets: [word] })) diets.push(word);
    else foods.push(word);
  }
  return { allergens, diets, foods };
}

function requestOf(c: Catalogue, missing: string, values: Values): SwapRequest {
  const serves = number(values, "serves");
  const grams = number(values, "grams");
  const minutes = number(values, "minutes");
  const limit = number(values, "limit");
  const have = listed(values.have);
  const avoid = avoidOf(c, listed(values.avoid));
  const dish = {
    ...(values.technique === undefined ? {} : { technique: values.technique }),
    ...(values.cuisine === undefined ? {} : { cuisine: values.cuisine }),
    ...(values.line === undefined ? {} : { lines: values.line }),
    ...(serves === undefined ? {} : { serves }),
    ...(grams === undefined ? {} : { grams }),
  };
  const { prefer } = values;
  if (prefer !== undefined && prefer !== "closest" && prefer !== "quickest" && prefer !== "cheapest")
    throw new UsageError(`--prefer is closest, quickest or cheapest, not "${prefer}".`);
  return {
    missing,
    ...(values.amount === undefined ? {} : { amount: values.amount }),
    ...(values.role === undefined ? {} : { role: values.role as NonNullable<SwapRequest["role"]> }),
    ...(values.for === undefined ? {} : { for: values.for }),
    ...(Object.keys(dish).length > 0 ? { dish } : {}),
    ...(have === undefined ? {} : { have }),
    ...(values["only-from-have"] === true ? { onlyFromHave: true } : {}),
    ...(avoid === undefined ? {} : { avoid }),
    ...(minutes === undefined ? {} : { minutes }),
    ...(values.computed === true ? { evidence: "computed" as const } : {}),
    ...(prefer === undefined ? {} : { prefer }),
    limit: limit ?? 6,
  };
}

/** Bytes of one request, far more than any dish has. */
const MAX_REQUEST = 1_000_000;
/** One request a line; one answer a line; a bad line becomes an error record and never stops the run. */
async function bulk(c: Catalogue, values: Values): Promise<number> {
  let bad = 0;
  for await (const { number: line, text, over, broken } of linesIn(process.stdin, undefined, MAX_REQUEST)) {
    if (text === "" && over === undefined && !broken) continue;
    let record: unknown;
    try {
      if (over !== undefined)
        throw new UsageError(`The line has ${over} bytes; a request may have ${MAX_REQUEST} at most.`);
      if (broken) throw new UsageError("The line is not UTF-8.");
      const request = text.trimStart().startsWith("{")
        ? (JSON.parse(text) as SwapRequest)
        : requestOf(c, text.trim(), values);
      record = swapsFor(c, request);
    } catch (e) {
      bad++;
      record = {
        error: isSteadfareError(e)
          ? { code: e.code, message: e.message, data: e.data }
          : { code: "unreadable request", message: e instanceof Error ? e.message : String(e) },
        line,
      };
    }
    // A reader that is behind is waited for, so that no answers pile up.
    if (!(await write(process.stdout, `${JSON.stringify(record)}\n`))) return 0;
  }
  return bad > 0 ? 2 : 0;
}

export async function swapCommand(positionals: readonly string[], values: Values): Promise<number> {
  const c = open(values);
  const missing = positionals.join(" ").trim();
  if (missing === "") throw new UsageError('Say what is missing: steadfare swap "450 g salt cod".');
  if (missing === "-") return bulk(c, values);
  const request = requestOf(c, missing, values);
  if (values.instead !== undefined) {
    const judgement = judgeSwap(c, { ...request, instead: values.instead });
    process.stdout.write(`${values.json ? JSON.stringify(judgement, undefined, 2) : judgementText(judgement)}\n`);
    return judgement.verdict === "no" ? 1 : 0;
  }
  const advice = swapsFor(c, request);
  process.stdout.write(
    `${values.json ? JSON.stringify(advice, undefined, 2) : adviceText(advice, values.why === true)}\n`,
  );
  return advice.swaps.length === 0 ? 1 : 0;
}

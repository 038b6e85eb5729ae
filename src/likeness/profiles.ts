import type { Ingredient, Store } from "../catalogue/index.js";

/** Texture and aroma of every ingredient as dense rows, made once a store. -1 marks an attribute nobody judged. */
export interface Profiles {
  readonly aromas: readonly string[];
  readonly textures: readonly string[];
  readonly aroma: Float64Array;
  /** raw, cooked, long: each size x textures.length */
  readonly texture: Readonly<Record<Stage, Float64Array>>;
}
export type Stage = "raw" | "cooked" | "long";
const STAGES: readonly Stage[] = ["raw", "cooked", "long"];
const made = new WeakMap<Store, Profiles>();

function stageOf(i: Ingredient, stage: Stage): Readonly<Record<string, number>> | undefined {
  const t = i.texture;
  if (stage === "raw") return t["raw"] ?? t["cooked"];
  if (stage === "cooked") return t["cooked"] ?? t["raw"];
  return t["long"] ?? t["cooked"] ?? t["raw"];
}

export function profilesOf(store: Store): Profiles {
  let profiles = made.get(store);
  if (profiles) return profiles;
  const aromas = store.terms["aroma"] ?? [];
  const textures = store.terms["texture"] ?? [];
  const aroma = new Float64Array(store.size * aromas.length);
  const texture = Object.fromEntries(
    STAGES.map((s) => [s, new Float64Array(store.size * textures.length).fill(-1)]),
  ) as Record<Stage, Float64Array>;
  for (const i of store.ingredients) {
    aromas.forEach((name, k) => {
      aroma[i.index * aromas.length + k] = i.aroma[name] ?? 0;
    });
    for (const stage of STAGES) {
      const scale = stageOf(i, stage);
      textures.forEach((name, k) => {
        const level = scale?.[name];
        if (level !== undefined) texture[stage][i.index * textures.length + k] = level;
      });
    }
  }
  profiles = { aromas, textures, aroma, texture };
  made.set(store, profiles);
  return profiles;
}

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { openCatalogue, storeOf } from "../../src/catalogue/index.js";
import { readCuisine } from "../../src/names/index.js";
import { readRecipe, swapNotes, swapsFor } from "../../src/index.js";

const c = openCatalogue();
const store = storeOf(c);
const read = (text: string) => readCuisine(store, text);

describe("the kitchen of a dish, as people write it", () => {
  it.each([
    ["Italian", ["Italian"]],
    ["italian", ["Italian"]],
    ["Sri Lankan", ["South Asian south"]],
    ["South Indian", ["South Asian south"]],
    ["Indian", ["South Asian north", "South Asian south"]],
    ["South Asian north", ["South Asian north"]],
    ["Tex-Mex", ["North American", "Mexican and Central American"]],
    ["Provençal cooking", ["French"]],
    ["Thai-Vietnamese", ["Thai", "Vietnamese"]],
    ["Middle Eastern", ["Levantine and Turkish"]],
    ["Puerto Rican", ["Caribbean"]],
  ] as const)("%s", (text, traditions) => {
    expect(read(text)).toEqual({ traditions, unknown: [] });
  });
  it("keeps what it does not know, and the rest of it", () => {
    expect(read("Martian")).toEqual({ traditions: [], unknown: ["martian"] });
    expect(read("Martian Italian")).toEqual({ traditions: ["Italian"], unknown: ["martian"] });
  });
  it("every tradition is read by its own name, and so is every word of the table", () => {
    for (const tradition of store.terms["tradition"] ?? []) expect(read(tradition).traditions).toEqual([tradition]);
    const table = store.tables["cuisines"] as Readonly<Record<string, readonly string[]>>;
    for (const [tradition, listed] of Object.entries(table))
      for (const word of listed) expect([word, ...read(word).traditions]).toContain(tradition);
  });
  it("no text breaks it", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 300 }), (text) => {
        const { traditions } = read(text);
        expect(new Set(traditions).size).toBe(traditions.length);
      }),
    );
  });
});

describe("a recipe that says its kitchen", () => {
  const recipe = (recipeCuisine?: string) =>
    readRecipe(c, {
      "@type": "Recipe",
      name: "Broth",
      recipeIngredient: ["2 tbsp fish sauce", "1 l water"],
      recipeCuisine,
    });
  it("has its notes written for that kitchen", () => {
    const ids = (cuisine?: string) =>
      swapNotes(c, recipe(cuisine), { perLine: 5 }).notes.flatMap((n) =>
        n.swaps.map((s) => s.use.map((u) => u.id).join(" + ")),
      );
    expect(ids("Japanese")).toEqual(ids("japan"));
    expect(ids("Japanese")).not.toEqual(ids("Ethiopian"));
    expect(ids("Martian")).toEqual(ids());
  });
});

describe("a swap in a kitchen", () => {
  const asked = (cuisine?: string) =>
    swapsFor(c, {
      missing: "30 g anchovies",
      role: "umami seasoning",
      ...(cuisine === undefined ? {} : { dish: { cuisine } }),
    });
  it("is answered the same however the kitchen is written", () => {
    expect(asked("italian").swaps).toEqual(asked("Italian").swaps);
    expect(asked("Italy").swaps).toEqual(asked("Italian").swaps);
    expect(asked("Thai").swaps).not.toEqual(asked("Italian").swaps);
  });
  it("an unknown kitchen changes nothing and is told back", () => {
    expect(asked("Martian").swaps).toEqual(asked().swaps);
    expect(asked("Martian").notUnderstood).toEqual(["martian"]);
  });
});

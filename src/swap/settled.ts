import type { Ingredient } from "../catalogue/index.js";
import { carrierDose, carrierOf, dose } from "../dose/index.js";
import {
  aromaLikeness,
  commonMakeup,
  customLikeness,
  formLikeness,
  kinLikeness,
  partsOf,
  textureLikeness,
  useLikeness,
} from "../likeness/index.js";
import type { RoleId, ScorePart } from "../types.js";
import type { Ask } from "./ask.js";
import { isCommonPractice, type Known } from "./evidence.js";
import { gainedNotes } from "./gates.js";
import { cookedAlready, isFine, isMince } from "./prep.js";
import { codesIn, traitsOf } from "./traits.js";

export type PartName = ScorePart["name"];
export type Weights = Readonly<Record<PartName, number>>;
export interface WeightTable {
  readonly bulk: Weights;
  readonly seasoning: Weights;
  readonly working: Weights;
  /** What evidence weighs: what cooks are known to do, and what a publication names. */
  readonly evidence: number;
  readonly published: number;
  /** What a stand-in no table names gets under evidence when tables do speak of the need. */
  readonly unlisted: number;
  /** The same for a near twin of what is missing. */
  readonly twin: number;
  /** Of the weight of the role, what goes by whether the two are bought for the same. */
  readonly use: Readonly<Record<"bulk" | "seasoning" | "working", number>>;
  /** Of the weight of the handling, what goes by whether the two come to the kitchen alike. */
  readonly form: number;
  readonly floor: Readonly<Record<"bulk" | "seasoning" | "working", number>>;
}

const BULK: readonly string[] = ["served weight"];
const SPICES: readonly string[] = ["spice", "herb", "chilli"];
const SEASONING: readonly string[] = ["salt", "acid", "umami", "pungency", "aroma"];

/** One job asked, with what the missing ingredient brings to it. */
export interface Job {
  readonly role: RoleId;
  /** Its weight squared: how much it counts. */
  readonly counts: number;
  /** How well the missing ingredient does it, never taken for less than a little. */
  readonly theirs: number;
  readonly carrier: string;
  /** What carries it, in the amount that is missing. */
  readonly want: number;
}

/** g soda neutralised per g of gas given off; 0 for what is balanced in itself, below for an alkali. */
export function balance(ask: Ask, i: Ingredient): number {
  const lift = dose(ask.store, i, "lift");
  const neutralising = dose(ask.store, i, "neutralising");
  return lift > 0 && !Number.isNaN(neutralising) ? neutralising / lift : 0;
}

function weightIn(i: Ingredient, role: string): number | undefined {
  for (const r of i.roles) if (r.role === role) return r.weight;
  return undefined;
}

/** Zest is no herb and a spice no aromatic, but fragrance is what all of them are there for: the one does half the job of the other. */
const FRAGRANT: readonly string[] = ["aromatic", "herb", "spice"];
const LENT = 0.5;
function able(use: Ingredient, { role, carrier }: Job): number {
  const own = weightIn(use, role) ?? 0;
  if (carrier !== "aroma" || own >= LENT) return own;
  return FRAGRANT.reduce((most, other) => Math.max(most, LENT * (weightIn(use, other) ?? 0)), own);
}

/** Answers by a code that many ingredients share; `null` stands for undefined. */
type ByCode<T> = (i: Ingredient) => T;
function byCode<T extends number | boolean | undefined>(codes: ArrayLike<number>, of: (i: Ingredient) => T): ByCode<T> {
  // As long as it will be from the start: a list that grows by leaps is looked up like a table of words.
  const made = new Array<T | null | undefined>(codesIn(codes)).fill(undefined);
  return (i) => {
    // -1 means none.
    const code = (codes[i.index] as number) + 1;
    const old = made[code];
    if (old !== undefined) return old === null ? (undefined as T) : old;
    const value = of(i);
    made[code] = value === undefined ? null : value;
    return value;
  };
}

/**
 * What of a question is the same for every stand-in, and what of a stand-in depends on something it shares with others: worked out once.
 * Thousands are weighed for one answer.
 */
export class Settled {
  readonly table: WeightTable;
  readonly klass: "bulk" | "seasoning" | "working";
  readonly weights: Weights;
  readonly jobs: readonly Job[];
  /** Sum of what the jobs count. */
  readonly total: number;
  /** Whether lift is among the jobs. */
  readonly lifts: boolean;
  readonly balance: number;
  /** How many known swaps fit the question. */
  readonly named: number;
  /** What it weighs to be left out: more where a publication names others. */
  readonly silence: number;
  /** Notes of the missing ingredient beyond sweet and sour, which are tastes. */
  readonly notes: readonly string[];
  private readonly minced: boolean;
  /** Whether the missing thing is a blend of spices or herbs whose parts were written down. */
  private readonly blend: boolean;
  readonly aroma: ByCode<number>;
  readonly cooked: ByCode<boolean>;
  readonly custom: ByCode<number>;
  readonly texture: Readonly<Record<Ask["stage"], ByCode<number | undefined>>>;
  private readonly use: ByCode<number>;
  private readonly itemCooked: boolean;
  private readonly uncooked: boolean;
  private readonly mince: ByCode<boolean>;
  private readonly fine: ByCode<boolean>;
  private readonly kinOf: ByCode<number>;
  /** How many notes it brings that neither the missing ingredient nor the dish has. */
  readonly gained: ByCode<number>;

  constructor(private readonly ask: Ask) {
    const { store, item } = ask;
    this.table = store.tables["weights"] as WeightTable;
    const top = carrierOf(store, ask.roles[0]?.role ?? "main protein");
    this.klass = BULK.includes(top) ? "bulk" : SEASONING.includes(top) ? "seasoning" : "working";
    this.weights = this.table[this.klass];
    this.jobs = ask.roles.map(({ role, weight }) => {
      const carrier = carrierOf(store, role);
      return {
        role,
        counts: weight * weight,
        theirs: Math.max(weightIn(item, role) ?? 1, 0.3),
        carrier,
        want: carrierDose(store, item, carrier) * ask.grams,
      };
    });
    this.total = this.jobs.reduce((sum, job) => sum + job.counts, 0);
    this.lifts = ask.roles.some((r) => r.role === "leavener" && r.weight >= 0.5);
    this.balance = balance(ask, item);
    const fitting = ask.known.filter((k) => k.fits >= 0.6);
    // An exchange list is one word said, however long the list.
    this.named = fitting.filter((k) => !k.exchange).length + (fitting.some((k) => k.exchange) ? 1 : 0);
    this.silence = Math.max(this.table.evidence, ...fitting.map((k) => this.evidenceOf(k)));
    this.notes = item.dominant.filter((n) => n !== "sweet" && n !== "sour");
    this.minced = isMince(item);
    this.blend =
      item.kinds.some((k) => k.includes("blend")) &&
      item.kinds.some((k) => SPICES.includes(k)) &&
      partsOf(store, item) !== undefined;
    this.aroma = byCode(store.codes("aroma"), (i) => aromaLikeness(store, item, i));
    this.cooked = byCode(store.codes("state"), cookedAlready);
    // Of what is fine itself the rest is as fine as it can be cut.
    this.fine = byCode(store.codes("state"), isFine(item) ? () => false : isFine);
    this.use = byCode(store.codes("roles"), (i) => useLikeness(item, i));
    this.custom = byCode(store.codes("traditions"), (i) => customLikeness(item, i, ask.cuisines));
    const textures = store.codes("texture");
    const texture = (stage: Ask["stage"]): ByCode<number | undefined> =>
      byCode(textures, (i) => textureLikeness(store, item, i, stage));
    this.texture = { raw: texture("raw"), cooked: texture("cooked"), long: texture("long") };
    const traits = traitsOf(store);
    this.mince = byCode(traits.kin, isMince);
    this.kinOf = byCode(traits.kin, (i) => kinLikeness(item, i));
    this.gained = byCode(traits.dominant, (i) => gainedNotes(ask, i).length);
    this.itemCooked = cookedAlready(item);
    this.uncooked = !item.cannot.has("edible uncooked");
  }

  /** How much of the smell it keeps, 0 to 1. */
  smell(use: Ingredient): number {
    const words = this.aroma(use);
    return this.blend
      ? this.ofBlend(words, commonMakeup(this.ask.store, this.ask.item, [{ ingredient: use, grams: 1 }]))
      : words;
  }
  /**
   * A dozen families of aroma do not tell one spice from the next: what a blend of spices smells like is told in part by what is in it.
   * @param common how much of its makeup is there
   */
  ofBlend(words: number, common: number | undefined): number {
    return this.blend && common !== undefined ? (words + common) / 2 : words;
  }
  /** Whether its pieces are not those of the missing ingredient, and cannot be made so: mince for meat, riced or mashed for whole. */
  cutApart(use: Ingredient): boolean {
    return this.mince(use) !== this.minced || this.fine(use);
  }
  /** What a known swap weighs. */
  evidenceOf(known: Known): number {
    return isCommonPractice(known.edge) || known.exchange ? this.table.evidence : this.table.published;
  }
  /** How well a stand-in does the jobs by its own weights, 0 to 1 (never less than its role mark), and at `grams` only as far as it brings what carries them. */
  jobFit(use: Ingredient, share: number, grams: number | undefined): number {
    let sum = 0;
    for (const job of this.jobs) {
      const mine = able(use, job);
      sum += job.counts * Math.min(1, mine / job.theirs) * this.dosed(use, job, grams);
    }
    return this.total === 0 ? 0 : (share * sum) / this.total;
  }
  /**
   * The mark of the role: how well it does the jobs asked, and in part whether it is bought for the same: what is known for another job is
   * not what a cook reaches for. Rises with the fit.
   * @param use by weight, of a mixture
   */
  roleMark(fit: number, uses: readonly { readonly ingredient: Ingredient; readonly grams: number }[]): number {
    const part = Math.min(1, this.table.use[this.klass] / this.weights.role);
    if (part === 0) return fit;
    return (1 - part) * fit + part * meanOf(uses, this.use);
  }
  /** The mark of the handling: work, and in part whether it comes in the same form. Rises with the mark of the work. */
  handlingMark(work: number, uses: readonly { readonly ingredient: Ingredient }[]): number {
    const part = Math.min(1, this.table.form / this.weights.handling);
    const only = uses.length === 1 ? uses[0] : undefined;
    const form = only ? formLikeness(this.ask.store, this.ask.item, only.ingredient) : STIRRED;
    return (1 - part) * work + part * form;
  }
  /** Share of what carries a job that so many grams bring, at most 1; 1 where it was not measured. A tenth short is nobody's concern. */
  private dosed(use: Ingredient, job: Job, grams: number | undefined): number {
    if (grams === undefined) return 1;
    const share = (carrierDose(this.ask.store, use, job.carrier) * grams) / job.want;
    return share < 0.9 ? share : 1;
  }
  /** Dry grain and raw beans are not compared dry for a salad: what is not eaten uncooked is compared cooked. */
  stage(use: Ingredient): Ask["stage"] {
    const { stage } = this.ask;
    return stage === "raw" && !(this.uncooked && !use.cannot.has("edible uncooked")) ? "cooked" : stage;
  }
  /** What comes cooked out of a tin or pot does not take the sauce or hold its bite as the raw does, and the other way round. */
  cookedApart(use: Ingredient): boolean {
    return this.cooked(use) !== this.itemCooked;
  }
  kin(use: Ingredient): number {
    const { item } = this.ask;
    return item.food === use.food ? kinLikeness(item, use) : this.kinOf(use);
  }
}

/** What is stirred together of several has no form of its own: about as often like the missing thing as not quite. */
const STIRRED = 0.8;
function meanOf(
  uses: readonly { readonly ingredient: Ingredient; readonly grams: number }[],
  of: (i: Ingredient) => number,
): number {
  const only = uses.length === 1 ? uses[0] : undefined;
  if (only) return of(only.ingredient);
  let sum = 0;
  let grams = 0;
  for (const u of uses) {
    sum += of(u.ingredient) * u.grams;
    grams += u.grams;
  }
  return sum / grams;
}

const made = new WeakMap<Ask, Settled>();
export function settledOf(ask: Ask): Settled {
  let settled = made.get(ask);
  if (settled === undefined) made.set(ask, (settled = new Settled(ask)));
  return settled;
}

import { groupBy } from "#engine/catalogue.ts";
import { type Trouble, troubleBeside } from "#engine/variance/causes/beside.ts";
import { Board, type Choice } from "#engine/variance/causes/board.ts";
import type { Candidate } from "#engine/variance/causes/candidate.ts";
import { candidatesOf } from "#engine/variance/causes/catalogue.ts";
import type { Cause } from "#engine/variance/causes/cause.ts";
import { type Experience, NO_EXPERIENCE, withExperience } from "#engine/variance/causes/experience.ts";
import { Residuals } from "#engine/variance/causes/residuals.ts";
import type { Scene } from "#engine/variance/causes/scene.ts";
import { type Chosen, remainder, scoreOf, selectChoices } from "#engine/variance/causes/select.ts";

/** A choice with the cause it stands for; a trouble of a window beside has none and is not reported. */
type CauseChoice = Choice & { candidate: Candidate | undefined };

/** A cause joins when it is this much likelier than that there is nothing (log odds). */
const LEAST_LOG_ODDS = Math.log(1.5);
/** Explanations of the same numbers below this are not worth anyone's check. */
const LEAST_PROBABILITY = 0.03;
/** What is this much less likely than nothing is no explanation of anything (log odds). */
const LEAST_SCORE = -40;
/** Rivals shown beside the likeliest one. */
const MOST_RIVALS = 5;

/**
 * The likeliest causes of what is unexplained between two counts, best first.
 *
 * Each candidate predicts a signature over the items and their windows; the few that explain the
 * residuals best are found by `selectChoices`. What no arithmetic can tell apart (a bottle broken, short in
 * the drop, or not seen) comes together as one `group`, each with its share of the probability and its check.
 */
export function causesIn(scene: Scene, experience: Experience = NO_EXPERIENCE): Cause[] {
  const residuals = new Residuals(scene);
  const candidates = withExperience(candidatesOf(scene), experience);
  const choices = [
    ...candidates.map((candidate) => visibleChoice(residuals, candidate)),
    ...troubleBeside(scene, candidates).map((trouble) => hiddenChoice(residuals, trouble)),
  ];
  const board = new Board(choices, residuals.values.length);
  const chosen = selectChoices(residuals.values, board, LEAST_LOG_ODDS);
  return chosen
    .filter(({ choice }) => choice.candidate !== undefined)
    .flatMap((entry, group) => explanations(scene, residuals, { board, chosen, entry, group }))
    .sort((a, b) => b.probability - a.probability);
}

function visibleChoice(residuals: Residuals, candidate: Candidate): CauseChoice {
  const { kind, what, sign, count } = candidate;
  return {
    ...choiceOf(residuals, candidate, { family: kind, key: JSON.stringify([kind, what, sign, count]) }),
    candidate,
  };
}

function hiddenChoice(residuals: Residuals, trouble: Trouble): CauseChoice {
  return { ...choiceOf(residuals, trouble, { family: "beside", key: trouble.key }), candidate: undefined };
}

function choiceOf(
  residuals: Residuals,
  { effects, size, chance }: Pick<Candidate, "effects" | "size" | "chance">,
  { family, key }: Pick<Choice, "family" | "key">,
): Choice {
  return {
    vector: residuals.whiten(effects),
    size,
    spans: effects.reduce(
      (sum, { before, now, after }) => sum + [before, now, after].filter(Boolean).length,
      0,
    ),
    logOdds: Math.log(chance) - Math.log1p(-Math.min(chance, 0.99)),
    family,
    key,
  };
}

/** The explanations of one chosen cause's part of the residuals, with the probability of each. */
function explanations(
  scene: Scene,
  residuals: Residuals,
  {
    board,
    chosen,
    entry,
    group,
  }: {
    board: Board<CauseChoice>;
    chosen: readonly Chosen<CauseChoice>[];
    entry: Chosen<CauseChoice>;
    group: number;
  },
): Cause[] {
  const rest = remainder(residuals.values, chosen, entry);
  const taken = new Set(chosen.filter((other) => other !== entry).map(({ choice }) => choice.key));
  const scored = board.touching(entry.choice.vector).flatMap((choice) => {
    const { candidate, key } = choice;
    if (candidate === undefined || taken.has(key)) return [];
    const { size, score } = scoreOf(rest, choice);
    return score > LEAST_SCORE ? [{ candidate, key, size, score }] : [];
  });
  // Likelihoods are too large for numbers: all odds are taken against the best score.
  const top = scored.reduce((most, { score }) => Math.max(most, score), 0);
  const nothing = Math.exp(-top);
  const sum = scored.reduce((total, { score }) => total + Math.exp(score - top), nothing);
  return [...groupBy(scored, ({ key }) => key).values()]
    .map((alike) => ({
      best: alike.reduce((a, b) => (b.score > a.score ? b : a)),
      probability: alike.reduce((total, { score }) => total + Math.exp(score - top), 0) / sum,
    }))
    .sort((a, b) => b.probability - a.probability)
    .filter(
      ({ best, probability }, rank, ranked) =>
        (probability >= LEAST_PROBABILITY && rank < MOST_RIVALS) ||
        isSameSpec(best, ranked[0]?.best, best.score - top),
    )
    .map(({ best, probability }) =>
      causeFrom(scene, best.candidate, { size: best.size, probability, group }),
    );
}

/** How much less likely the other reading of a spec may be and still be shown, as log odds. */
const SPEC_REACH = -25;

/** A spec that is off and an older card in use are one question, "which spec is right?": they come together. */
function isSameSpec(
  { candidate }: { candidate: Candidate },
  first: { candidate: Candidate } | undefined,
  behind: number,
): boolean {
  const isSpec = (kind: string) => kind === "unit-slip" || kind === "older-spec";
  return (
    first !== undefined &&
    isSpec(candidate.kind) &&
    isSpec(first.candidate.kind) &&
    candidate.what === first.candidate.what &&
    behind > SPEC_REACH
  );
}

function causeFrom(
  scene: Scene,
  candidate: Candidate,
  { size, probability, group }: { size: number; probability: number; group: number },
): Cause {
  const { kind, what, unit, sign, count, likely, effects, check, correct } = candidate;
  const whole = wholeSize(unit, size);
  const items = effects
    .filter(({ item, now }) => now !== 0 && scene.items.has(item))
    .map(({ item, now }) => ({ item, amount: now * size }))
    .sort((a, b) => weightOf(scene, b) - weightOf(scene, a));
  return {
    kind,
    what,
    size: whole,
    unit,
    probability,
    evidence: likely === undefined ? items : [{ item: likely, amount: whole, unit: "serve" }, ...items],
    check: check(whole),
    ...(sign === undefined ? {} : { sign }),
    ...(count === undefined ? {} : { count }),
    correction: correct?.(whole) ?? null,
    group,
  };
}

/** Serves, pieces and containers are whole. */
function wholeSize(unit: string, size: number): number {
  return unit === "serve" || unit === "piece" || unit === "container" || unit === "each"
    ? Math.max(1, Math.round(size))
    : size;
}

/** How much a line of evidence says, in standard uncertainties. */
function weightOf(scene: Scene, { item, amount }: { item: string; amount: number }): number {
  const sd = scene.items.get(item)?.now.sd ?? 1;
  return Math.abs(amount) / Math.max(sd, 0.3);
}

import { itemNamed } from "#engine/catalogue.ts";
import type { Delivery } from "#engine/stock/movement.ts";
import { packNamed } from "#engine/stock/pack.ts";
import { type Candidate, effectNow, shareChance, type Weighed } from "#engine/variance/causes/candidate.ts";
import { containersOf, dateOfScene } from "#engine/variance/causes/containers.ts";
import { receivedIn } from "#engine/variance/causes/received.ts";
import type { Scene } from "#engine/variance/causes/scene.ts";

/** Common practice: once in a quarter; and no line that can be wrong is so more often than one in fifty. */
const WRONG_PACK = { week: 0.08, line: 0.02 } as const;

/** A delivery written down in another size than came, or a case for a bottle. */
export function wrongPackSize(scene: Scene): Candidate[] {
  const date = dateOfScene(scene);
  const weighed = receivedIn(scene).flatMap(({ delivery, containers, size }): Weighed[] => {
    const { item, supplier, invoice, pack } = delivery;
    const others = containersOf(scene, item).filter((container) => container.size !== size);
    const booked = packNamed(scene.facts.catalogue, { item, pack, supplier, date });
    const perCase = booked?.perCase ?? 1;
    const swapped = delivery.of === "case" ? containers / perCase : containers * perCase;
    const ofOther = delivery.of === "case" ? "container" : "case";
    const wrong = (trueQuantity: number, weight: number, instead: string, fact: Delivery): Weighed => {
      const off = trueQuantity - containers * size;
      return {
        kind: "wrong-pack-size",
        what: item,
        unit: itemNamed(scene.facts.catalogue, item).base,
        effects: [effectNow(item, -Math.sign(off))],
        size: { kind: "around", center: Math.abs(off), relativeSd: 1e-3 },
        weight,
        correct: () => ({
          sheet: "deliveries",
          was: delivery,
          fact,
          words: `Corrects invoice ${invoice} from ${supplier}: ${item} came ${instead}.`,
        }),
        check: () =>
          `Look at invoice ${invoice} from ${supplier}: ${item} is entered as ${pack} by the ${delivery.of}; it may have come ${instead}.`,
      };
    };
    return [
      ...others.map((other) =>
        wrong(containers * other.size, other.pack.supplier === supplier ? 2 : 1, `as ${other.pack.pack}`, {
          ...delivery,
          pack: other.pack.pack,
          quantity: containers,
          of: "container",
        }),
      ),
      ...(perCase > 1 ? [wrong(swapped * size, 0.2, `by the ${ofOther}`, { ...delivery, of: ofOther })] : []),
    ];
  });
  const lines = new Set(weighed.map(({ what }) => JSON.stringify(what))).size;
  return shareChance(Math.min(WRONG_PACK.week, WRONG_PACK.line * lines), weighed);
}

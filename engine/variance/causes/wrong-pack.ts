import { itemNamed } from "#engine/catalogue.ts";
import { packNamed } from "#engine/stock/pack.ts";
import { type Candidate, effectNow, shareChance, type Weighed } from "#engine/variance/causes/candidate.ts";
import { containersOf, dateOfScene } from "#engine/variance/causes/containers.ts";
import { receivedIn } from "#engine/variance/causes/received.ts";
import type { Scene } from "#engine/variance/causes/scene.ts";

const WRONG_PACK = 0.08;

/** A delivery written down in another size than came, or a case for a bottle. */
export function wrongPackSize(scene: Scene): Candidate[] {
  const date = dateOfScene(scene);
  const weighed = receivedIn(scene).flatMap(({ delivery, containers, size }): Weighed[] => {
    const { item, supplier, invoice, pack } = delivery;
    const others = containersOf(scene, item).filter((container) => container.size !== size);
    const booked = packNamed(scene.facts.catalogue, { item, pack, supplier, date });
    const perCase = booked?.perCase ?? 1;
    const swapped = delivery.of === "case" ? containers / perCase : containers * perCase;
    const wrong = (trueQuantity: number, weight: number, instead: string): Weighed => {
      const off = trueQuantity - containers * size;
      return {
        kind: "wrong-pack-size",
        what: item,
        unit: itemNamed(scene.facts.catalogue, item).base,
        effects: [effectNow(item, -Math.sign(off))],
        size: { kind: "around", center: Math.abs(off), relativeSd: 1e-3 },
        weight,
        check: () =>
          `Look at invoice ${invoice} from ${supplier}: ${item} is entered as ${pack} by the ${delivery.of}; it may have come ${instead}.`,
      };
    };
    return [
      ...others.map((other) =>
        wrong(containers * other.size, other.pack.supplier === supplier ? 2 : 1, `as ${other.pack.pack}`),
      ),
      ...(perCase > 1
        ? [wrong(swapped * size, 0.2, `by the ${delivery.of === "case" ? "container" : "case"}`)]
        : []),
    ];
  });
  return shareChance(WRONG_PACK, weighed);
}

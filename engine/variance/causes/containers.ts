import { foldName } from "#engine/name.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import { countedPack } from "#engine/stock/holding.ts";
import type { Pack } from "#engine/stock/item.ts";
import { containerSize, packsInForce } from "#engine/stock/pack.ts";
import type { BusinessDate } from "#engine/time.ts";
import type { Scene } from "#engine/variance/causes/scene.ts";

/** A container an item comes in, in base units. */
export type Container = { pack: Pack; size: number; perCase: number };

/** The business date whose packs a period is reckoned with. */
export function dateOfScene({ facts, from }: Scene): BusinessDate {
  return businessDateOf(from, facts.catalogue.venue);
}

/** The containers an item can be had in, one of each size, the one it was last counted in first. */
export function containersOf(scene: Scene, item: string): Container[] {
  const { catalogue } = scene.facts;
  const date = dateOfScene(scene);
  const counted = countedIn(scene, item);
  const packs = packsInForce(catalogue, item, date);
  const bySize = new Map<number, Container>();
  for (const pack of [...(counted === undefined ? [] : [counted]), ...packs]) {
    const size = containerSize(catalogue, pack);
    const held = bySize.get(size);
    if (held === undefined) bySize.set(size, { pack, size, perCase: pack.perCase });
    else held.perCase = Math.max(held.perCase, pack.perCase);
  }
  return [...bySize.values()];
}

function countedIn(scene: Scene, item: string): Pack | undefined {
  const { catalogue, book } = scene.facts;
  const names = new Set([scene.closing, scene.opening].map(({ name }) => foldName(name)));
  const row = book.counts.findLast((entry) => entry.item === item && names.has(foldName(entry.count)));
  return row === undefined ? undefined : countedPack(catalogue, row, dateOfScene(scene));
}

/** "1 bottle", "2 bottles": a container in words, whatever it is. */
export function inContainers(count: number, { pack }: Pick<Container, "pack">): string {
  return `${count} × ${pack.pack}`;
}

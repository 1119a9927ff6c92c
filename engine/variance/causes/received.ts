import { businessDateOf } from "#engine/sales/read/clock.ts";
import type { Delivery } from "#engine/stock/movement.ts";
import { containerSize, containersIn, packNamed } from "#engine/stock/pack.ts";
import type { Scene } from "#engine/variance/causes/scene.ts";

/** A delivery that lies in its item's window, in containers. */
export type Received = { delivery: Delivery; containers: number; size: number };

/** The deliveries entered between the two counts. */
export function receivedIn(scene: Scene): Received[] {
  const { book } = scene.facts;
  return book.deliveries.flatMap((delivery) => {
    const windows = scene.items.get(delivery.item);
    if (windows === undefined) return [];
    const { opening, closing } = windows.now;
    if (delivery.at < opening.at || delivery.at >= closing.at) return [];
    const came = received(scene, delivery);
    return came !== undefined && came.containers > 0 ? [came] : [];
  });
}

/** A delivery in containers; undefined when its pack is not known. */
export function received(scene: Scene, delivery: Delivery): Received | undefined {
  const { catalogue } = scene.facts;
  const { item, pack, supplier, quantity, of } = delivery;
  const date = businessDateOf(delivery.at, catalogue.venue);
  const bought = packNamed(catalogue, { item, pack, supplier, date });
  if (bought === undefined) return undefined;
  return { delivery, containers: containersIn(bought, quantity, of), size: containerSize(catalogue, bought) };
}

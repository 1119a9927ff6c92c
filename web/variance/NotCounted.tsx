import { listWords } from "../format.ts";
import { say } from "../texts/say.ts";

type Props = { items: readonly string[]; areasByItem: Record<string, string[]> };

/** What has no variance because a count missed it, or some of its areas. */
export function NotCounted({ items, areasByItem }: Props) {
  const short = Object.entries(areasByItem);
  if (items.length === 0 && short.length === 0) return null;
  return (
    <section>
      <h2>{say("variance.notCounted")}</h2>
      <p>{say("variance.notCountedMore")}</p>
      {short.length === 0 ? null : (
        <ul className="ruled not-counted-short">
          {short.map(([item, areas]) => (
            <li key={item}>{say("variance.notCountedAreas", { item, areas: listWords(areas) })}</li>
          ))}
        </ul>
      )}
      {items.length === 0 ? null : (
        <details open={items.length <= 12}>
          <summary>{say("variance.missingFromCount", { count: items.length })}</summary>
          <p>{items.join(", ")}</p>
        </details>
      )}
    </section>
  );
}

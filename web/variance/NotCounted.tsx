import { listWords, plural } from "../format.ts";

type Props = { items: readonly string[]; areasByItem: Record<string, string[]> };

/** What has no variance because a count missed it, or some of its areas. */
export function NotCounted({ items, areasByItem }: Props) {
  const short = Object.entries(areasByItem);
  if (items.length === 0 && short.length === 0) return null;
  return (
    <section>
      <h2>Not counted</h2>
      <p>Not counted is not zero. These have no variance until both counts have seen them whole.</p>
      {short.length === 0 ? null : (
        <ul className="ruled not-counted-short">
          {short.map(([item, areas]) => (
            <li key={item}>
              {item}: not counted in {listWords(areas)}
            </li>
          ))}
        </ul>
      )}
      {items.length === 0 ? null : (
        <details open={items.length <= 12}>
          <summary>{plural(items.length, "item")} missing from a count</summary>
          <p>{items.join(", ")}</p>
        </details>
      )}
    </section>
  );
}

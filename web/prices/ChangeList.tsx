import { useId } from "react";
import { USUAL_CATEGORIES } from "#engine/stock/category.ts";
import { shownWord } from "../book-words.ts";
import { formatNumber } from "../format.ts";
import { formatMoney } from "../money.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { changeShare, type PriceChange, type PriceListAnswer } from "./price-list.ts";

type Props = {
  list: PriceListAnswer;
  /** Rows that are not to be taken over. */
  left: ReadonlySet<number>;
  categories: Record<string, string>;
  /** Items of the book that were chosen for lines. */
  chosen: Record<string, string>;
  known: readonly { name: string; category: string }[];
  onToggle: (changes: readonly PriceChange[], isTaken: boolean) => void;
  onCategory: (rows: readonly number[], category: string) => void;
  onItem: (row: number, item: string) => void;
};

const SECTIONS = [
  { kind: "price", title: "prices.pricesChange" },
  { kind: "pack", title: "prices.newFromSupplier" },
  { kind: "item", title: "prices.newItems" },
] as const;

/** The lines by what they would change, what hangs on most money first. */
export function ChangeList(props: Props) {
  const { list } = props;
  const same = list.changes.filter(({ kind }) => kind === "same").length;
  return (
    <>
      {SECTIONS.map(({ kind, title }) => {
        const changes = list.changes
          .filter((change) => change.kind === kind)
          .sort((a, b) => Math.abs(changeShare(b) ?? 0) - Math.abs(changeShare(a) ?? 0));
        return changes.length === 0 ? null : (
          <Section key={kind} title={say(title)} changes={changes} {...props} />
        );
      })}
      {same === 0 ? null : <p className="soft">{say("prices.same", { count: same })}</p>}
      {list.refused.length === 0 ? null : (
        <details>
          <summary>{say("prices.refused", { count: list.refused.length })}</summary>
          <ul className="ruled">
            {list.refused.map(({ row, reason }) => (
              <li key={row}>{say("prices.refusedRow", { row, reason })}</li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

function Section({
  title,
  changes,
  left,
  onToggle,
  ...props
}: Props & { title: string; changes: PriceChange[] }) {
  const isAll = changes.every(({ row }) => !left.has(row));
  return (
    <section>
      <h2>
        {title} <span className="soft">{changes.length}</span>
      </h2>
      {changes.length === 1 ? null : (
        <label className="prices-all">
          <input type="checkbox" checked={isAll} onChange={() => onToggle(changes, !isAll)} />
          {say("prices.all")}
        </label>
      )}
      {changes[0]?.kind === "item" ? <CategoryOfAll changes={changes} {...props} /> : null}
      <ul className="prices-lines">
        {changes.map((change) => (
          <Line key={change.row} change={change} left={left} onToggle={onToggle} {...props} />
        ))}
      </ul>
    </section>
  );
}

type LineProps = Omit<Props, "list"> & { change: PriceChange };

function Line({ change, left, categories, chosen, known, onToggle, onCategory, onItem }: LineProps) {
  const { currency } = useVenue();
  const { row, kind, product, item, pack, before, after, alike, category } = change;
  const id = useId();
  const share = changeShare(change);
  const size = pack.perCase > 1 ? say("prices.perCase", { pack: pack.pack, count: pack.perCase }) : pack.pack;
  return (
    <li>
      <input
        id={id}
        type="checkbox"
        checked={!left.has(row)}
        onChange={(event) => onToggle([change], event.target.checked)}
      />
      <label htmlFor={id}>
        {item}
        <span className="prices-more">
          {product === item ? size : say("prices.inTheList", { size, product })}
        </span>
      </label>
      <span className="prices-money">
        {before === null ? null : <span className="soft">{formatMoney(before, currency)} → </span>}
        {formatMoney(after, currency)}
        {share === null ? null : (
          <span className="prices-more">
            {share > 0 ? "+" : ""}
            {formatNumber(share * 100, 1)} %
          </span>
        )}
      </span>
      {kind === "item" ? (
        <span className="prices-new">
          <Choice
            label={say("prices.categoryOf", { product })}
            value={categories[row] ?? category}
            options={categoriesOf(known, category)}
            shown={(option) => shownWord("category", option)}
            empty={say("prices.category")}
            onPick={(picked) => onCategory([row], picked)}
          />
          {alike.length === 0 ? null : (
            <Choice
              label={say("prices.isInBookAs", { product })}
              value=""
              options={alike}
              empty={say("prices.newItem")}
              onPick={(picked) => onItem(row, picked)}
            />
          )}
        </span>
      ) : chosen[row] === undefined ? null : (
        <span className="prices-new">
          <button type="button" className="button button-quiet" onClick={() => onItem(row, "")}>
            {say("prices.isElse")}
          </button>
        </span>
      )}
    </li>
  );
}

function CategoryOfAll({
  changes,
  known,
  categories,
  onCategory,
}: Pick<Props, "known" | "categories" | "onCategory"> & { changes: PriceChange[] }) {
  const open = changes.filter(({ row, category }) => (categories[row] ?? category).trim() === "");
  if (open.length < 2) return null;
  return (
    <Choice
      label={say("prices.categoryOfAll")}
      value=""
      options={categoriesOf(known, "")}
      shown={(option) => shownWord("category", option)}
      empty={say("prices.categoryOfLines", { count: open.length })}
      onPick={(picked) =>
        onCategory(
          open.map(({ row }) => row),
          picked,
        )
      }
    />
  );
}

type ChoiceProps = {
  label: string;
  value: string;
  options: readonly string[];
  /** An option as it is read, where that is not how it is kept. */
  shown?: (option: string) => string;
  empty: string;
  onPick: (value: string) => void;
};

function Choice({ label, value, options, shown, empty, onPick }: ChoiceProps) {
  return (
    <select aria-label={label} value={value} onChange={(event) => onPick(event.target.value)}>
      <option value="">{empty}</option>
      {options.map((option) => (
        <option key={option} value={option}>
          {shown?.(option) ?? option}
        </option>
      ))}
    </select>
  );
}

/** The categories of the book, the usual ones of a bar, and the one that the list names. */
function categoriesOf(known: readonly { category: string }[], own: string): string[] {
  const all = new Set([
    ...known.map(({ category }) => category),
    ...USUAL_CATEGORIES,
    ...(own === "" ? [] : [own]),
  ]);
  return [...all].sort((a, b) => shownWord("category", a).localeCompare(shownWord("category", b)));
}

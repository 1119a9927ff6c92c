import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { Link, useNavigate } from "@tanstack/react-router";
import { type FormEvent, useId, useState } from "react";
import { readAmount } from "#engine/measure/amount.ts";
import { kindOf, lawfulSizesMl } from "#engine/measure/standard-sizes.ts";
import type { BaseUnit } from "#engine/measure/units.ts";
import type { CatalogueAnswer } from "../answers.ts";
import { ProblemError } from "../api.ts";
import { Button } from "../parts/Button.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { catalogueQuery } from "../queries.ts";
import { say } from "../texts/say.ts";
import { addNewItem, blankItem } from "./new-item.ts";
import type { Sheet, SheetItem } from "./sheet.ts";
import { replaceSheet, saveShelf, withArea } from "./shelf.ts";
import type { CountState } from "./use-count.ts";

type Props = { count: CountState; sheet: Sheet; area: string | undefined };

/** Something that stands where the sheet has none: known to the book or new, it is put on the shelf and counted. */
export function FoundItem({ count, sheet, area: begun }: Props) {
  const navigate = useNavigate({ from: "/count" });
  const queryClient = useQueryClient();
  const notify = useNotify();
  const { data: catalogue } = useQuery(catalogueQuery);
  const [areaTyped, setArea] = useState(begun ?? sheet.areas[0]?.area ?? "");
  const area = areaTyped.trim();
  const [name, setName] = useState("");
  const [category, setCategory] = useState("");
  const [base, setBase] = useState<BaseUnit>("ml");
  const [holds, setHolds] = useState("");
  const listId = useId();
  const known = knownItem(name, sheet, catalogue);
  const isNew = name.trim() !== "" && known === undefined;
  const size = readAmount(holds, { decimalComma: true });
  // The sizes in which such a bottle is sold, to choose from.
  const kind = kindOf(category);
  const save = useMutation({
    mutationFn: async () => {
      const fresh = { name: name.trim(), category: category.trim(), base, size: size ?? 0 };
      if (isNew) await addNewItem(fresh, say("steps.foundNote"));
      const item = known ?? blankItem(fresh);
      const listed = sheet.areas.find((one) => one.area === area)?.items ?? [];
      const isThere = listed.some((one) => one.item === item.item);
      const items = isThere ? listed : [...listed, { ...item, lastCount: null, areas: item.areas + 1 }];
      replaceSheet(queryClient, count.name, withArea(sheet, area, items));
      const names = items.map((one) => one.item);
      await saveShelf(area, names).catch((error: unknown) => {
        // The count goes on without signal; only the book's shelf has to be told later.
        if (!(error instanceof ProblemError) || error.status !== 0) throw error;
        notify({ text: say("steps.offShelf", { item: item.item }) });
      });
      return item.item;
    },
    onSuccess: (item) => void navigate({ search: { count: count.name, area, item } }),
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    save.mutate();
  };
  const isComplete =
    area !== "" && name.trim() !== "" && (!isNew || (category.trim() !== "" && (size ?? 0) > 0));
  const names = new Set([...namesOn(sheet), ...(catalogue?.items ?? []).map((item) => item.name)]);
  return (
    <Page title={say("steps.found")} next={say("steps.foundNext")}>
      <form className="start-count" onSubmit={submit}>
        <Field
          label={say("steps.where")}
          hint={say("steps.whereHint")}
          required
          list={`${listId}-areas`}
          value={areaTyped}
          onChange={(event) => setArea(event.target.value)}
        />
        <datalist id={`${listId}-areas`}>
          {sheet.areas.map((one) => (
            <option key={one.area} value={one.area} />
          ))}
        </datalist>
        <Field
          label={say("steps.what")}
          required
          list={listId}
          value={name}
          hint={isNew ? say("steps.whatNew") : undefined}
          onChange={(event) => setName(event.target.value)}
        />
        <datalist id={listId}>
          {[...names].sort().map((one) => (
            <option key={one} value={one} />
          ))}
        </datalist>
        {isNew ? (
          <>
            <Field
              label={say("steps.category")}
              required
              value={category}
              placeholder={say("steps.categoryAs")}
              onChange={(event) => setCategory(event.target.value)}
            />
            <Select
              label={say("steps.keptIn")}
              options={[
                { value: "ml", label: say("steps.keptInMl") },
                { value: "g", label: say("steps.keptInG") },
                { value: "each", label: say("count.pieces") },
              ]}
              value={base}
              onChange={(event) => setBase(event.target.value as BaseUnit)}
            />
            <Field
              label={base === "each" ? say("steps.piecesInPack") : say("steps.oneHolds", { unit: base })}
              required
              inputMode="decimal"
              list={`${listId}-sizes`}
              value={holds}
              onChange={(event) => setHolds(event.target.value)}
            />
            <datalist id={`${listId}-sizes`}>
              {kind === undefined || base !== "ml"
                ? null
                : lawfulSizesMl(kind).map((size) => <option key={size} value={size} />)}
            </datalist>
          </>
        ) : null}
        <Button kind="main" type="submit" disabled={!isComplete || save.isPending}>
          {say("steps.countIt")}
        </Button>
        <Problems error={save.error} />
      </form>
      <p className="count-more">
        <Link to="/count" search={{ count: count.name, area: begun }}>
          {say("steps.backWithout")}
        </Link>
      </p>
    </Page>
  );
}

function namesOn(sheet: Sheet): string[] {
  return sheet.areas.flatMap(({ items }) => items.map(({ item }) => item));
}

/** An item of the sheet by its name, however it is written; else one that only the book knows, without its packs. */
function knownItem(typed: string, sheet: Sheet, catalogue: CatalogueAnswer | undefined) {
  const name = typed.trim().toLocaleLowerCase();
  const isIt = (known: string) => known.toLocaleLowerCase() === name;
  const onSheet: SheetItem | undefined = sheet.areas
    .flatMap(({ items }) => items)
    .find(({ item }) => isIt(item));
  if (onSheet !== undefined) return onSheet;
  const inBook = catalogue?.items.find((item) => isIt(item.name));
  return inBook && { ...blankItem({ ...inBook, size: null }) };
}

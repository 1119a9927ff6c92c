import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { readAmount } from "#engine/measure/amount.ts";
import type { BaseUnit } from "#engine/measure/units.ts";
import { foldName } from "#engine/name.ts";
import type { SpecTextLine } from "#engine/specs/text/entry.ts";
import { USUAL_CATEGORIES } from "#engine/stock/category.ts";
import { shownWord } from "../book-words.ts";
import { addNewItem } from "../count/new-item.ts";
import { Button } from "../parts/Button.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { focusIfLost } from "../parts/focus-if-lost.ts";
import { Problems } from "../parts/Problems.tsx";
import { useFocusFirst } from "../parts/use-focus-first.ts";
import { catalogueQuery } from "../queries.ts";
import { say } from "../texts/say.ts";

type Props = { line: SpecTextLine; fieldId: string };

/** Where a spec names what the book does not have: takes it in from here, so that what is typed need not wait. */
export function AddItem({ line: { item, unit }, fieldId }: Props) {
  const { data: catalogue } = useQuery(catalogueQuery);
  const [isOpen, setOpen] = useState(false);
  if (item === null || catalogue === undefined) return null;
  if (catalogue.items.some(({ name }) => foldName(name) === foldName(item))) return null;
  if (!isOpen) {
    return (
      <Button kind="quiet" onClick={() => setOpen(true)}>
        {say("specs.addItem", { item })}
      </Button>
    );
  }
  const categories = [...new Set([...USUAL_CATEGORIES, ...catalogue.items.map(({ category }) => category)])];
  return <Facts {...{ item, unit, categories, fieldId }} />;
}

type FactsProps = Pick<SpecTextLine, "unit"> & { item: string; categories: string[]; fieldId: string };

function Facts({ item, unit, categories, fieldId }: FactsProps) {
  const queryClient = useQueryClient();
  const place = useFocusFirst<HTMLDivElement>();
  const [category, setCategory] = useState("");
  const [base, setBase] = useState<BaseUnit>(unit === "each" || unit === "g" ? unit : "ml");
  const [holds, setHolds] = useState("");
  const size = readAmount(holds, { decimalComma: true }) ?? 0;
  const save = useMutation({
    mutationFn: () => addNewItem({ name: item, category, base, size }, ""),
    onSuccess: async () => {
      await queryClient.invalidateQueries();
      focusIfLost(fieldId);
    },
  });
  return (
    <div ref={place} className="field-row add-item">
      <Select
        label={say("specs.itemCategory", { item })}
        value={category}
        options={[
          { value: "", label: say("specs.choose") },
          ...categories.map((value) => ({ value, label: shownWord("category", value) })),
        ]}
        onChange={(event) => setCategory(event.target.value)}
      />
      <Select
        label={say("specs.itemKeptIn")}
        value={base}
        options={[
          { value: "ml", label: "ml" },
          { value: "g", label: "g" },
          { value: "each", label: say("specs.itemPieces") },
        ]}
        onChange={(event) => setBase(BASES.find((one) => one === event.target.value) ?? "ml")}
      />
      <Field
        label={say("specs.itemHolds", { unit: base === "each" ? say("specs.itemPieces") : base })}
        inputMode="decimal"
        value={holds}
        onChange={(event) => setHolds(event.target.value)}
      />
      <Button disabled={category === "" || size <= 0} isBusy={save.isPending} onClick={() => save.mutate()}>
        {say("specs.addItemNow")}
      </Button>
      <p className="small soft">{say("specs.addItemMore")}</p>
      <Problems error={save.error} />
    </div>
  );
}

const BASES = ["ml", "g", "each"] as const;

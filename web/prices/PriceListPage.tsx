import "./prices.css";
import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { answerOf, server } from "../api.ts";
import { Busy } from "../parts/Busy.tsx";
import { Button } from "../parts/Button.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { catalogueQuery } from "../queries.ts";
import { say } from "../texts/say.ts";
import { ChangeList } from "./ChangeList.tsx";
import { ListForm } from "./ListForm.tsx";
import { type Asked, isReady, type PriceChange, readList, takenOver } from "./price-list.ts";
import { Questions } from "./Questions.tsx";
import { Suppliers } from "./Suppliers.tsx";

/** A supplier's price list, compared with the book; what is ticked is taken over at once. */
export function PriceListPage() {
  const queryClient = useQueryClient();
  const notify = useNotify();
  const [asked, setAsked] = useState<Asked | null>(null);
  const [left, setLeft] = useState<ReadonlySet<number>>(new Set());
  const [categories, setCategories] = useState<Record<string, string>>({});
  const { data: catalogue } = useQuery(catalogueQuery);
  const read = useQuery({
    queryKey: [
      "price-list",
      asked && { ...asked, file: [asked.file.name, asked.file.size, asked.file.lastModified] },
    ],
    queryFn: () => readList(asked as Asked),
    enabled: asked !== null,
    // Answering a question or choosing an item must not make the list vanish meanwhile.
    placeholderData: (before) => before,
  });
  const list = asked === null ? undefined : read.data;
  const isOpen = list !== undefined && list.questions.length === 0;
  const offered = isOpen ? list.changes.filter(({ kind }) => kind !== "same") : [];
  const taken = offered.filter((change) => !left.has(change.row) && isReady(change, categories));
  const waiting = offered.filter((change) => !left.has(change.row) && !isReady(change, categories));
  const take = useMutation({
    mutationFn: () =>
      answerOf(
        server["price-lists"].$post({
          json: { supplier: asked?.supplier.trim() ?? "", ...takenOver(taken, categories) },
        }),
      ),
    onSuccess: async () => {
      notify({
        text: say("prices.takenOver", { count: taken.length, supplier: asked?.supplier.trim() ?? "" }),
      });
      await queryClient.invalidateQueries();
    },
  });
  const begin = (begun: Asked) => {
    setAsked(begun);
    setLeft(new Set());
    setCategories({});
    take.reset();
  };
  const toggle = (changes: readonly PriceChange[], isTaken: boolean) => {
    const next = new Set(left);
    for (const { row } of changes) {
      if (isTaken) next.delete(row);
      else next.add(row);
    }
    setLeft(next);
  };
  return (
    <Page title={say("prices.title")} next={say("prices.next")}>
      <ListForm asked={asked} suppliers={catalogue?.suppliers.map(({ name }) => name) ?? []} onAsk={begin} />
      <Problems error={read.error} />
      {asked !== null && read.isLoading ? <Busy what={say("prices.comparing")} /> : null}
      {list === undefined || asked === null ? null : (
        <>
          <Questions list={list} onAnswer={(answer) => setAsked({ ...asked, ...answer })} />
          {isOpen ? (
            <>
              <ChangeList
                list={list}
                left={left}
                categories={categories}
                chosen={asked.chosen}
                known={catalogue?.items ?? []}
                onToggle={toggle}
                onCategory={(rows, category) =>
                  setCategories({ ...categories, ...Object.fromEntries(rows.map((row) => [row, category])) })
                }
                onItem={(row, item) => {
                  const { [row]: _, ...others } = asked.chosen;
                  setAsked({ ...asked, chosen: item === "" ? others : { ...others, [row]: item } });
                }}
              />
              <div className="prices-act">
                <Button
                  kind="main"
                  disabled={taken.length === 0 || take.isPending}
                  onClick={() => take.mutate()}
                >
                  {taken.length === 0
                    ? say("prices.nothingToTake")
                    : say("prices.takeOver", { count: taken.length })}
                </Button>
                {waiting.length === 0 ? null : (
                  <span className="soft">{say("prices.staysOut", { count: waiting.length })}</span>
                )}
              </div>
              <Problems error={take.error} />
            </>
          ) : null}
        </>
      )}
      {catalogue === undefined ? null : <Suppliers catalogue={catalogue} />}
    </Page>
  );
}

import { useMutation, useQueryClient } from "@tanstack/react-query";
import { Link, useNavigate } from "@tanstack/react-router";
import { GripVertical } from "lucide-react";
import { type KeyboardEvent, type PointerEvent, useRef, useState } from "react";
import { Button } from "../parts/Button.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { say } from "../texts/say.ts";
import type { SheetArea } from "./sheet.ts";
import { moved, replaceSheet, saveShelf, withArea } from "./shelf.ts";
import type { CountState } from "./use-count.ts";

/** An area's items put in the order in which one walks past them: dragged by the handle, or moved by arrow keys on it. */
export function ShelfOrder({ count, area }: { count: CountState; area: SheetArea }) {
  const navigate = useNavigate({ from: "/count" });
  const queryClient = useQueryClient();
  const [items, setItems] = useState(() => area.items.map(({ item }) => item));
  const [said, setSaid] = useState("");
  const list = useRef<HTMLOListElement>(null);
  const back = { count: count.name, area: area.area };
  const save = useMutation({
    mutationFn: () => saveShelf(area.area, items),
    onSuccess: () => {
      const ordered = items.flatMap((name) => area.items.find(({ item }) => item === name) ?? []);
      if (count.wholeSheet !== undefined) {
        replaceSheet(queryClient, count.name, withArea(count.wholeSheet, area.area, ordered));
      }
      void navigate({ search: back });
    },
  });
  const move = (from: number, to: number) => {
    if (to < 0 || to >= items.length || to === from) return;
    setItems(moved(items, from, to));
    setSaid(say("steps.isNow", { item: items[from] ?? "", place: to + 1, count: items.length }));
  };
  const onKey = (event: KeyboardEvent, from: number) => {
    const to = { ArrowUp: from - 1, ArrowDown: from + 1, Home: 0, End: items.length - 1 }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    move(from, to);
  };
  const onDrag = (event: PointerEvent<HTMLButtonElement>, from: number) => {
    if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
    const rows = [...(list.current?.children ?? [])];
    const to = rows.findIndex((row) => {
      const { top, bottom } = row.getBoundingClientRect();
      return event.clientY >= top && event.clientY < bottom;
    });
    if (to !== -1) move(from, to);
  };
  return (
    <Page title={say("steps.order", { area: area.area })} next={say("steps.orderNext")}>
      <ol ref={list} className="shelf-order">
        {items.map((item, place) => (
          <li key={item}>
            <span>{place + 1}</span>
            <span>{item}</span>
            <button
              type="button"
              className="shelf-handle"
              aria-label={say("steps.move", { item, place: place + 1, count: items.length })}
              onKeyDown={(event) => onKey(event, place)}
              onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
              onPointerMove={(event) => onDrag(event, place)}
            >
              <GripVertical aria-hidden="true" size={22} />
            </button>
          </li>
        ))}
      </ol>
      <p className="visually-hidden" role="status">
        {said}
      </p>
      <Problems error={save.error} />
      <div className="count-end">
        <Button kind="main" disabled={save.isPending} onClick={() => save.mutate()}>
          {say("steps.saveOrder")}
        </Button>
        <Link to="/count" search={back} className="button">
          {say("steps.leaveOrder")}
        </Link>
      </div>
    </Page>
  );
}

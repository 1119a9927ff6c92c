import { useMutation, useQueryClient } from "@tanstack/react-query";
import type { RingName } from "#engine/sales/ring.ts";
import { answerOf, server } from "../api.ts";
import { focusIfLost } from "../parts/focus-if-lost.ts";
import { useNotify } from "../parts/Notice.tsx";
import { say } from "../texts/say.ts";
import { meaningWords } from "./meaning-of.ts";

/** Id of the heading over the names that nobody explained. */
export const UNKNOWN_HEADING = "unknown-names";

/** Saves what names mean, one or many as one act, and offers to take it back. */
export function useAcceptNames() {
  const queryClient = useQueryClient();
  const notify = useNotify();
  const undo = async (names: readonly RingName[]) => {
    for (const { ringName } of names) await answerOf(server["ring-names"].undo.$post({ json: { ringName } }));
    await queryClient.invalidateQueries();
  };
  return useMutation({
    mutationFn: (names: RingName[]) => answerOf(server["ring-names"].accept.$post({ json: { names } })),
    onSuccess: async (_, names) => {
      notify({ text: savedWords(names), undo: () => void undo(names) });
      await queryClient.invalidateQueries();
      focusIfLost(UNKNOWN_HEADING);
    },
  });
}

function savedWords(names: readonly RingName[]): string {
  const [only] = names;
  if (only === undefined || names.length > 1) return say("sales.namesExplained", { count: names.length });
  return only.soldAs.kind === "ignore"
    ? say("sales.nameIgnored", { name: only.ringName })
    : say("sales.nameIsMeant", { name: only.ringName, meaning: meaningWords(only) });
}

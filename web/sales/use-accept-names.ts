import { useMutation, useQueryClient } from "@tanstack/react-query";
import type { RingName } from "#engine/sales/ring.ts";
import { answerOf, server } from "../api.ts";
import { plural } from "../format.ts";
import { useNotify } from "../parts/Notice.tsx";
import { meaningWords } from "./meaning-of.ts";

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
    },
  });
}

function savedWords(names: readonly RingName[]): string {
  const [only] = names;
  if (only === undefined || names.length > 1) return `${plural(names.length, "name")} explained.`;
  return only.soldAs.kind === "ignore"
    ? `${only.ringName} is left out from now on.`
    : `${only.ringName} means ${meaningWords(only)}.`;
}

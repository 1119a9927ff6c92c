import { useMutation, useQueryClient } from "@tanstack/react-query";
import { useNotify } from "../parts/Notice.tsx";
import { actWords } from "./act-words.ts";
import { undoAct } from "./history-queries.ts";

/** Undoes an act, says so, and offers to undo that in turn; everything shown is renewed. */
export function useUndo() {
  const queryClient = useQueryClient();
  const notify = useNotify();
  const undo = useMutation({
    mutationFn: undoAct,
    onSuccess: async ({ seq, summary }) => {
      const { title, what } = actWords({ act: "undone", summary });
      notify({ text: `${title}: ${what}`, undo: () => undo.mutate(seq) });
      await queryClient.invalidateQueries();
    },
  });
  return undo;
}

export type Undo = ReturnType<typeof useUndo>;

import { useMutation, useQueryClient } from "@tanstack/react-query";
import { useNotify } from "../parts/Notice.tsx";
import { useVenue } from "../shell/venue.tsx";
import { actAndFacts, actWords } from "./act-words.ts";
import { latestActQuery, undoAct } from "./history-queries.ts";

/** Undoes an act, says so, and offers to undo that in turn; everything shown is renewed. */
export function useUndo() {
  const queryClient = useQueryClient();
  const notify = useNotify();
  const venue = useVenue();
  const undo = useMutation({
    mutationFn: undoAct,
    onSuccess: async ({ seq, summary }) => {
      const latest = await queryClient
        .fetchQuery({ ...latestActQuery(undefined), staleTime: 0 })
        .catch(() => undefined);
      // Somebody else may have done something since.
      const own = latest?.acts.find((act) => act.seq === seq);
      const { title, what } =
        own === undefined ? actWords({ act: "undone", summary }) : actAndFacts(own, venue);
      notify({ text: `${title}: ${what}`, undo: () => undo.mutate(seq) });
      await queryClient.invalidateQueries();
    },
  });
  return undo;
}

export type Undo = ReturnType<typeof useUndo>;

import { type QueryKey, useMutation, useQueryClient } from "@tanstack/react-query";
import { focusIfLost } from "../parts/focus-if-lost.ts";

/** A change whose list is asked for anew once it is made. */
export function useChange<Typed>(list: { queryKey: QueryKey }, change: (typed: Typed) => Promise<unknown>) {
  const queryClient = useQueryClient();
  return useMutation({
    mutationFn: change,
    onSuccess: async () => {
      await queryClient.invalidateQueries({ queryKey: list.queryKey });
      focusIfLost();
    },
  });
}

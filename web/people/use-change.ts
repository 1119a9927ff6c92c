import { type QueryKey, useMutation, useQueryClient } from "@tanstack/react-query";

/** A change whose list is asked for anew once it is made. */
export function useChange<Typed>(list: { queryKey: QueryKey }, change: (typed: Typed) => Promise<unknown>) {
  const queryClient = useQueryClient();
  return useMutation({
    mutationFn: change,
    onSuccess: () => queryClient.invalidateQueries({ queryKey: list.queryKey }),
  });
}

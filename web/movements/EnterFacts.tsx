import { useMutation, useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useFocusFirst } from "../parts/use-focus-first.ts";
import { say } from "../texts/say.ts";
import { type AnyFact, enterFacts, type Facts, type Kind, newEntryKey } from "./entries.ts";
import { FactForm } from "./FactForm.tsx";

/** The form of one kind; what was sent stands until the server has taken it. */
export function EnterFacts({ kind, onClose }: { kind: Kind; onClose: () => void }) {
  const queryClient = useQueryClient();
  const notify = useNotify();
  const place = useFocusFirst<HTMLElement>();
  const [key] = useState(newEntryKey);
  const save = useMutation({
    mutationFn: (facts: AnyFact[]) => enterFacts(kind, facts as Facts[typeof kind][], key),
    onSuccess: async (_, facts) => {
      notify({ text: say("movements.entered", { count: facts.length }) });
      onClose();
      await queryClient.invalidateQueries();
    },
  });
  return (
    <section ref={place} className="enter-facts">
      <FactForm
        kind={kind}
        act={say("movements.enter")}
        isBusy={save.isPending}
        onSubmit={(facts) => save.mutate(facts)}
        onLeave={onClose}
      />
      <Problems error={save.error} />
    </section>
  );
}

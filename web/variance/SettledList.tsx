import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { formatMoment, listWords } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { focusIfLost } from "../parts/focus-if-lost.ts";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { settledWords } from "./cause-words.ts";
import { CAUSES_HEADING, settledQuery, takeSettlementBack } from "./settled.ts";

const SHOWN = 12;

/** What the checks showed so far; each can be taken back, and its correction with it. */
export function SettledList() {
  const venue = useVenue();
  const notify = useNotify();
  const queryClient = useQueryClient();
  const { data: settled = [] } = useQuery(settledQuery);
  const takeBack = useMutation({
    mutationFn: takeSettlementBack,
    onSuccess: async () => {
      notify({ text: say("variance.takenBack") });
      await queryClient.invalidateQueries();
      focusIfLost(CAUSES_HEADING);
    },
  });
  if (settled.length === 0) return null;
  return (
    <section>
      <h2>{say("variance.settled")}</h2>
      <ul className="settled">
        {settled.slice(0, SHOWN).map((one) => (
          <li key={one.id}>
            <span>
              {settledWords(one, venue)}{" "}
              <span className="soft">
                {say("variance.settledBetween", {
                  when: formatMoment(one.settledAt, venue),
                  opening: one.opening,
                  closing: one.closing,
                })}
              </span>
            </span>
            <Button
              kind="quiet"
              className="no-print"
              disabled={takeBack.isPending}
              onClick={() => takeBack.mutate(one.id)}
              aria-label={say("variance.takeBackOf", { what: listWords([one.cause.what].flat()) })}
            >
              {say("variance.takeBack")}
            </Button>
          </li>
        ))}
      </ul>
      {takeBack.error === null ? null : <Problems error={takeBack.error} />}
    </section>
  );
}

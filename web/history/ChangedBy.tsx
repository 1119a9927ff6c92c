import { useQuery } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import { formatLocal } from "../format.ts";
import { useMay } from "../people/signed-in.ts";
import { say } from "../texts/say.ts";
import { actWords } from "./act-words.ts";
import { latestActQuery } from "./history-queries.ts";

/** Who changed a thing last and when, with the way to all that was done about it; without a name, of the whole bar. */
export function ChangedBy({ subject }: { subject?: string | undefined }) {
  const mayRead = useMay("runBar");
  const { data } = useQuery({ ...latestActQuery(subject), enabled: mayRead });
  const [act] = data?.acts ?? [];
  if (act === undefined) return null;
  return (
    <p className="soft no-print">
      {say("parts.changedBy", {
        what: actWords(act).title,
        who: act.who,
        when: formatLocal(act.atLocal),
      })}{" "}
      <Link to="/history" search={subject === undefined ? {} : { subject }}>
        {subject === undefined ? say("shell.history") : say("parts.historyOf", { name: subject })}
      </Link>
    </p>
  );
}

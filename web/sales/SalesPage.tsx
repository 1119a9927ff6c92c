import "./sales.css";
import { useQuery } from "@tanstack/react-query";
import { formatShare } from "../figures.ts";
import { formatDate } from "../format.ts";
import { Page } from "../parts/Page.tsx";
import { say } from "../texts/say.ts";
import { Imports } from "./Imports.tsx";
import { KeepStaff } from "./KeepStaff.tsx";
import { KnownNames } from "./KnownNames.tsx";
import { ReadFiles } from "./ReadFiles.tsx";
import { SalesByDay } from "./SalesByDay.tsx";
import { daysQuery, unmappedQuery } from "./sales-queries.ts";
import { UnknownModifiers } from "./UnknownModifiers.tsx";
import { UnknownNames } from "./UnknownNames.tsx";

/** Sales files in, what the till's names mean, and what was sold by day. */
export function SalesPage() {
  return (
    <Page title={say("sales.title")} next={<Standing />}>
      <ReadFiles />
      <UnknownNames />
      <UnknownModifiers />
      <KnownNames />
      <SalesByDay />
      <Imports />
      <KeepStaff />
    </Page>
  );
}

function Standing() {
  const { data: days } = useQuery(daysQuery);
  const { data: sold } = useQuery(unmappedQuery);
  const last = days?.at(-1);
  if (days !== undefined && last === undefined) return say("sales.nextFirst");
  if (last === undefined || sold === undefined) return say("sales.nextPlain");
  const unknown = sold.unmapped.length;
  const known = say("sales.standing", { date: formatDate(last.date), share: formatShare(sold.coverage) });
  return unknown === 0 ? known : `${known} ${say("sales.sayUnknown")}`;
}

import "./sales.css";
import { useQuery } from "@tanstack/react-query";
import { formatDate, formatShare } from "../format.ts";
import { Page } from "../parts/Page.tsx";
import { Imports } from "./Imports.tsx";
import { KnownNames } from "./KnownNames.tsx";
import { ReadFiles } from "./ReadFiles.tsx";
import { SalesByDay } from "./SalesByDay.tsx";
import { daysQuery, unmappedQuery } from "./sales-queries.ts";
import { UnknownModifiers } from "./UnknownModifiers.tsx";
import { UnknownNames } from "./UnknownNames.tsx";

/** Sales files in, what the till's names mean, and what was sold by day. */
export function SalesPage() {
  return (
    <Page title="Sales" next={<Standing />}>
      <ReadFiles />
      <UnknownNames />
      <UnknownModifiers />
      <KnownNames />
      <SalesByDay />
      <Imports />
    </Page>
  );
}

function Standing() {
  const { data: days } = useQuery(daysQuery);
  const { data: sold } = useQuery(unmappedQuery);
  const last = days?.at(-1);
  if (days !== undefined && last === undefined) return "Choose the first file your till exports.";
  if (last === undefined || sold === undefined) return "Sales and what they mean.";
  const unknown = sold.unmapped.length;
  const known = `Sales are in up to ${formatDate(last.date)}; ${formatShare(sold.coverage)} of what was sold is known to the book.`;
  return unknown === 0 ? known : `${known} Say what the unknown names below mean.`;
}

import type { FormEvent } from "react";
import { Button } from "../parts/Button.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { say } from "../texts/say.ts";
import { roleWords, sureWords } from "./column-words.ts";
import { type Correction, ROLES } from "./correction.ts";
import type { SalesLook } from "./sales-queries.ts";

const DATE_ORDERS = [
  { value: "", text: "sales.asFileShows" },
  { value: "dmy", text: "sales.dayFirst" },
  { value: "mdy", text: "sales.monthFirst" },
  { value: "ymd", text: "sales.yearFirst" },
] as const;
const DECIMALS = [
  { value: "", text: "sales.asFileShows" },
  { value: ".", text: "sales.decimalPoint" },
  { value: ",", text: "sales.decimalComma" },
] as const;

type Props = {
  look: SalesLook;
  said: Correction;
  /** Whether the file was looked at as it is said. */
  isSeen: boolean;
  isOpen: boolean;
  onSay: (said: Correction) => void;
  onLook: () => void;
};

/** The columns of a file with what each was taken for, which a person can put right. */
export function Corrections({ look, said, isSeen, isOpen, onSay, onLook }: Props) {
  const hasDates = said.roles.some((role) => role === "when" || role === "date" || role === "businessDate");
  const submit = (event: FormEvent) => {
    event.preventDefault();
    onLook();
  };
  return (
    <details className="corrections" open={isOpen}>
      <summary>{say("sales.columns")}</summary>
      <form onSubmit={submit}>
        <ul className="columns-found">
          {look.columns.map((column, place) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: headings may repeat; their place in the file is what they are
            <li key={place}>
              <ColumnRole
                heading={column.heading}
                sample={sampleOf(look, place)}
                sure={sureWords(column)}
                role={said.roles[place] ?? "unknown"}
                onRole={(role) => onSay({ ...said, roles: said.roles.with(place, role) })}
              />
            </li>
          ))}
        </ul>
        <div className="field-row">
          <Select
            label={say("sales.datesWritten")}
            options={DATE_ORDERS.map(({ value, text }) => ({ value, label: say(text) }))}
            value={said.dateOrder}
            onChange={({ target }) => onSay({ ...said, dateOrder: target.value as Correction["dateOrder"] })}
          />
          <Select
            label={say("sales.decimalsWritten")}
            options={DECIMALS.map(({ value, text }) => ({ value, label: say(text) }))}
            value={said.decimal}
            onChange={({ target }) => onSay({ ...said, decimal: target.value as Correction["decimal"] })}
          />
          {hasDates ? null : (
            <Field
              label={say("sales.dayOfFile")}
              type="date"
              value={said.day}
              onChange={({ target }) => onSay({ ...said, day: target.value })}
            />
          )}
        </div>
        {said.roles.includes("quantity") ? null : (
          <label className="tick">
            <input
              type="checkbox"
              checked={said.isRowOneSale}
              onChange={({ target }) => onSay({ ...said, isRowOneSale: target.checked })}
            />
            {say("sales.rowIsSale")}
          </label>
        )}
        <Button type="submit" disabled={isSeen}>
          {say("sales.lookAgain")}
        </Button>
      </form>
    </details>
  );
}

type ColumnProps = {
  heading: string;
  sample: string;
  sure: string;
  role: Correction["roles"][number];
  onRole: (role: Correction["roles"][number]) => void;
};

function ColumnRole({ heading, sample, sure, role, onRole }: ColumnProps) {
  const name = heading === "" ? say("sales.noHeading") : heading;
  // A column of persons stays one: it can be given another role, and no other column can be made one.
  const roles = role === "staff" ? ["staff" as const, ...ROLES] : ROLES;
  return (
    <Select
      className={role === "unknown" ? "column-unused" : ""}
      label={name}
      hint={
        <>
          {sample === "" ? say("sales.emptyColumn") : say("sales.sample", { text: sample })}{" "}
          {sure === "" ? "" : <em>{sure}</em>}
        </>
      }
      options={roles.map((value) => ({ value, label: roleWords(value) }))}
      value={role}
      onChange={({ target }) => onRole(target.value as Correction["roles"][number])}
    />
  );
}

const SAMPLE_LETTERS = 28;

/** The first cell of a column that holds something. */
function sampleOf({ rows }: SalesLook, column: number): string {
  const cell =
    rows
      .slice(1)
      .map((row) => (row[column] ?? "").trim())
      .find((text) => text !== "") ?? "";
  return cell.length <= SAMPLE_LETTERS ? cell : `${cell.slice(0, SAMPLE_LETTERS)}…`;
}

import { Link } from "@tanstack/react-router";
import { formatDate } from "../format.ts";
import type { Column } from "../parts/table-column.ts";
import { say } from "../texts/say.ts";

/** The name, which opens its spec. */
export function nameColumn<Row extends { name: string }>(head: string): Column<Row> {
  return {
    key: "name",
    head,
    kind: "text",
    onPhone: "lead",
    value: ({ name }) => name,
    show: ({ name }) => (
      <Link to="/specs/$name" params={{ name }}>
        {name}
      </Link>
    ),
  };
}

/** Since when the newest spec holds. */
export function fromColumn<Row extends { from: string | null; versions: number }>(): Column<Row> {
  return {
    key: "from",
    head: say("specs.specFrom"),
    kind: "text",
    value: ({ from }) => from,
    show: ({ from, versions }) => {
      if (from === null) return <span className="soft">{say("specs.noSpec")}</span>;
      return versions > 1
        ? say("specs.fromVersions", { date: formatDate(from), count: versions })
        : formatDate(from);
    },
  };
}

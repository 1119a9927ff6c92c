import { useQuery } from "@tanstack/react-query";
import { type FormEvent, useState } from "react";
import type { Role } from "#server/people/actor.ts";
import { answerOf, server } from "../api.ts";
import { formatMoment } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useVenue } from "../shell/venue.tsx";
import { OneTime } from "./OneTime.tsx";
import { type Token, tokensQuery } from "./people-queries.ts";
import { ROLES } from "./role-words.ts";
import { useChange } from "./use-change.ts";

const SCOPES = [
  { value: "read", label: "read" },
  { value: "write", label: "read and write" },
];

/** Keys for scripts that use the API; each is shown once, when it is made. */
export function Tokens() {
  const { data: tokens, error, refetch } = useQuery(tokensQuery);
  const [made, setMade] = useState<string | null>(null);
  return (
    <section>
      <h2>Tokens for scripts</h2>
      {error === null ? null : <Problems error={error} onRetry={() => void refetch()} />}
      {made === null ? null : (
        <OneTime
          title="The token"
          text={made}
          more="It is shown this once. Scripts send it in the header Authorization, after the word Bearer."
        />
      )}
      <ul className="ruled people-list">
        {tokens?.map((token) => (
          <TokenLine key={token.id} token={token} />
        ))}
      </ul>
      <AddToken onMade={setMade} />
    </section>
  );
}

function TokenLine({ token: { id, name, role, scope, madeBy, lastUsedAt } }: { token: Token }) {
  const venue = useVenue();
  const revoke = useChange(tokensQuery, () =>
    answerOf(server.tokens[":id"].revoke.$post({ param: { id: String(id) } })),
  );
  const used = lastUsedAt === null ? "never used" : `last used ${formatMoment(lastUsedAt, venue)}`;
  return (
    <li>
      <strong>{name}</strong>{" "}
      <span className="soft">
        may {scope === "read" ? "read" : "read and write"} as {role}, made by {madeBy}, {used}
      </span>
      <div className="person-acts">
        <Button aria-label={`Revoke ${name}`} onClick={() => revoke.mutate(undefined)}>
          Revoke
        </Button>
      </div>
      <Problems error={revoke.error} />
    </li>
  );
}

function AddToken({ onMade }: { onMade: (token: string) => void }) {
  const [name, setName] = useState("");
  const [role, setRole] = useState<Role>("manager");
  const [scope, setScope] = useState<"read" | "write">("read");
  const add = useChange(tokensQuery, async () => {
    const { token } = await answerOf(server.tokens.$post({ json: { name, role, scope } }));
    onMade(token);
    setName("");
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    add.mutate(undefined);
  };
  return (
    <form className="field-row person-add" onSubmit={submit}>
      <Field
        label="What the token is for"
        required
        maxLength={80}
        value={name}
        onChange={(event) => setName(event.target.value)}
      />
      <Select
        label="It may"
        options={SCOPES}
        value={scope}
        onChange={(event) => setScope(event.target.value === "write" ? "write" : "read")}
      />
      <Select
        label="As"
        options={ROLES}
        value={role}
        onChange={(event) => setRole(event.target.value as Role)}
      />
      <Button type="submit" disabled={add.isPending}>
        Make a token
      </Button>
      <Problems error={add.error} />
    </form>
  );
}

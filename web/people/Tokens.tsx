import { useQuery } from "@tanstack/react-query";
import { type FormEvent, useState } from "react";
import type { Role } from "#server/people/actor.ts";
import { answerOf, server } from "../api.ts";
import { formatMoment } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { OneTime } from "./OneTime.tsx";
import { type Token, tokensQuery } from "./people-queries.ts";
import { roleOptions, roleWord } from "./role-words.ts";
import { useChange } from "./use-change.ts";

/** Keys for scripts that use the API; each is shown once, when it is made. */
export function Tokens() {
  const { data: tokens, error, refetch } = useQuery(tokensQuery);
  const [made, setMade] = useState<string | null>(null);
  return (
    <section>
      <h2>{say("people.tokens")}</h2>
      {error === null ? null : <Problems error={error} onRetry={() => void refetch()} />}
      {made === null ? null : (
        <OneTime title={say("people.token")} text={made} more={say("people.tokenOnce")} />
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
  const used =
    lastUsedAt === null
      ? say("people.tokenNotUsed")
      : say("people.lastUsed", { at: formatMoment(lastUsedAt, venue) });
  return (
    <li>
      <strong>{name}</strong>{" "}
      <span className="soft">
        {say("people.tokenMay", { scope, role: roleWord(role), by: madeBy, used })}
      </span>
      <div className="person-acts">
        <Button aria-label={say("people.revokeNamed", { name })} onClick={() => revoke.mutate(undefined)}>
          {say("people.revoke")}
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
        label={say("people.tokenFor")}
        required
        maxLength={80}
        value={name}
        onChange={(event) => setName(event.target.value)}
      />
      <Select
        label={say("people.itMay")}
        options={[
          { value: "read", label: say("people.read") },
          { value: "write", label: say("people.readWrite") },
        ]}
        value={scope}
        onChange={(event) => setScope(event.target.value === "write" ? "write" : "read")}
      />
      <Select
        label={say("people.as")}
        options={roleOptions()}
        value={role}
        onChange={(event) => setRole(event.target.value as Role)}
      />
      <Button type="submit" disabled={add.isPending}>
        {say("people.makeToken")}
      </Button>
      <Problems error={add.error} />
    </form>
  );
}

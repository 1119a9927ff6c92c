import { useQuery } from "@tanstack/react-query";
import { type FormEvent, useState } from "react";
import type { Role } from "#server/people/actor.ts";
import { answerOf, server } from "../api.ts";
import { plural } from "../format.ts";
import { Busy } from "../parts/Busy.tsx";
import { Button } from "../parts/Button.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { Problems } from "../parts/Problems.tsx";
import { OneTime } from "./OneTime.tsx";
import { type Person, peopleQuery } from "./people-queries.ts";
import { ROLE_WORDS, ROLES } from "./role-words.ts";
import { useChange } from "./use-change.ts";

type Handed = { name: string; link: string };

/** Everybody with their role; somebody new gets a one-time link to hand over. */
export function PeopleList() {
  const { data: people, error, refetch } = useQuery(peopleQuery);
  const [handed, setHanded] = useState<Handed | null>(null);
  return (
    <section>
      <h2>Who may sign in</h2>
      {error === null ? null : <Problems error={error} onRetry={() => void refetch()} />}
      {people === undefined && error === null ? <Busy what="Opening the list" /> : null}
      {handed === null ? null : (
        <OneTime
          title={`Link for ${handed.name}`}
          text={handed.link}
          more="It works once, for three days. Show or send it to nobody else."
        />
      )}
      <ul className="ruled people-list">
        {people?.map((person) => (
          <PersonLine key={person.id} person={person} onHand={setHanded} />
        ))}
      </ul>
      <AddPerson onHand={setHanded} />
    </section>
  );
}

function PersonLine({ person, onHand }: { person: Person; onHand: (handed: Handed) => void }) {
  const { id, name, role, isActive } = person;
  const param = { id: String(id) };
  const change = useChange(peopleQuery, (json: { role?: Role; isActive?: boolean }) =>
    answerOf(server.people[":id"].$post({ param, json })),
  );
  const signOut = useChange(peopleQuery, () => answerOf(server.people[":id"]["sign-out"].$post({ param })));
  const invite = useChange(peopleQuery, async () => {
    const { link } = await answerOf(server.people[":id"].link.$post({ param }));
    onHand({ name, link: window.location.origin + link.path });
  });
  return (
    <li className={isActive ? "" : "person-gone"}>
      <strong>{name}</strong> <span className="soft">{standingOf(person)}</span>
      <div className="person-acts">
        <Select
          label={`Role of ${name}`}
          options={ROLES}
          value={role}
          onChange={(event) => change.mutate({ role: event.target.value as Role })}
        />
        <Button aria-label={`New link for ${name}`} onClick={() => invite.mutate(undefined)}>
          New link
        </Button>
        {person.sessions === 0 ? null : (
          <Button aria-label={`Sign out everywhere: ${name}`} onClick={() => signOut.mutate(undefined)}>
            Sign out everywhere
          </Button>
        )}
        <Button
          kind="quiet"
          aria-label={isActive ? `Shut out ${name}` : `Let in again ${name}`}
          onClick={() => change.mutate({ isActive: !isActive })}
        >
          {isActive ? "Shut out" : "Let in again"}
        </Button>
      </div>
      <Problems error={change.error ?? invite.error ?? signOut.error} />
    </li>
  );
}

function standingOf({ role, isActive, canSignIn, isPinStopped, sessions }: Person): string {
  if (!isActive) return "may not sign in";
  if (isPinStopped) return "PIN stopped after too many wrong tries: make a new link";
  if (!canSignIn) return "has not used the link yet";
  return `${ROLE_WORDS[role]}${sessions === 0 ? "" : `; signed in on ${plural(sessions, "device")}`}`;
}

function AddPerson({ onHand }: { onHand: (handed: Handed) => void }) {
  const [name, setName] = useState("");
  const [role, setRole] = useState<Role>("counter");
  const add = useChange(peopleQuery, async () => {
    const { link } = await answerOf(server.people.$post({ json: { name, role } }));
    onHand({ name, link: window.location.origin + link.path });
    setName("");
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    add.mutate(undefined);
  };
  return (
    <form className="field-row person-add" onSubmit={submit}>
      <Field
        label="Name of somebody new"
        required
        maxLength={80}
        value={name}
        onChange={(event) => setName(event.target.value)}
      />
      <Select
        label="Role"
        hint={ROLE_WORDS[role]}
        options={ROLES}
        value={role}
        onChange={(event) => setRole(event.target.value as Role)}
      />
      <Button kind="main" type="submit" disabled={add.isPending}>
        Add and make a link
      </Button>
      <Problems error={add.error} />
    </form>
  );
}

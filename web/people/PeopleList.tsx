import { useQuery } from "@tanstack/react-query";
import { type FormEvent, useState } from "react";
import type { Role } from "#server/people/actor.ts";
import { answerOf, server } from "../api.ts";
import { Busy } from "../parts/Busy.tsx";
import { Button } from "../parts/Button.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { Problems } from "../parts/Problems.tsx";
import { say } from "../texts/say.ts";
import { OneTime } from "./OneTime.tsx";
import { type Person, peopleQuery } from "./people-queries.ts";
import { mayWords, roleOptions } from "./role-words.ts";
import { useChange } from "./use-change.ts";

type Handed = { name: string; link: string };

/** Everybody with their role; somebody new gets a one-time link to hand over. */
export function PeopleList() {
  const { data: people, error, refetch } = useQuery(peopleQuery);
  const [handed, setHanded] = useState<Handed | null>(null);
  return (
    <section>
      <h2>{say("people.whoMay")}</h2>
      {error === null ? null : <Problems error={error} onRetry={() => void refetch()} />}
      {people === undefined && error === null ? <Busy what={say("people.openingList")} /> : null}
      {handed === null ? null : (
        <OneTime
          title={say("people.linkFor", { name: handed.name })}
          text={handed.link}
          more={say("people.linkOnce")}
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
          label={say("people.roleOf", { name })}
          options={roleOptions()}
          value={role}
          onChange={(event) => change.mutate({ role: event.target.value as Role })}
        />
        <Button aria-label={say("people.newLinkFor", { name })} onClick={() => invite.mutate(undefined)}>
          {say("people.newLink")}
        </Button>
        {person.sessions === 0 ? null : (
          <Button
            aria-label={say("people.signThemOutFor", { name })}
            onClick={() => signOut.mutate(undefined)}
          >
            {say("people.signThemOut")}
          </Button>
        )}
        <Button
          kind="quiet"
          aria-label={say(isActive ? "people.shutOutFor" : "people.letInFor", { name })}
          onClick={() => change.mutate({ isActive: !isActive })}
        >
          {isActive ? say("people.shutOut") : say("people.letIn")}
        </Button>
      </div>
      <Problems error={change.error ?? invite.error ?? signOut.error} />
    </li>
  );
}

function standingOf({ role, isActive, canSignIn, isPinStopped, sessions }: Person): string {
  if (!isActive) return say("people.mayNot");
  if (isPinStopped) return say("people.pinStopped");
  if (!canSignIn) return say("people.linkUnused");
  const may = mayWords(role);
  return sessions === 0 ? may : say("people.signedInOn", { may, count: sessions });
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
        label={say("people.newName")}
        required
        maxLength={80}
        value={name}
        onChange={(event) => setName(event.target.value)}
      />
      <Select
        label={say("people.role")}
        hint={mayWords(role)}
        options={roleOptions()}
        value={role}
        onChange={(event) => setRole(event.target.value as Role)}
      />
      <Button kind="main" type="submit" disabled={add.isPending}>
        {say("people.addAndLink")}
      </Button>
      <Problems error={add.error} />
    </form>
  );
}

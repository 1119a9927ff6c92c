import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { type FormEvent, useState } from "react";
import { answerOf, server } from "../api.ts";
import { formatMoment } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { focusIfLost } from "../parts/focus-if-lost.ts";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { type Device, devicesQuery } from "./people-queries.ts";
import { signInQuery } from "./signed-in.ts";

/** Phones and tablets on which a PIN counts; this one can be made one of them. */
export function Devices() {
  const { data: devices, error, refetch } = useQuery(devicesQuery);
  const isEnrolled = devices?.some(({ isThis }) => isThis) ?? false;
  return (
    <section>
      <h2>{say("people.devices")}</h2>
      {error === null ? null : <Problems error={error} onRetry={() => void refetch()} />}
      {devices?.length === 0 ? <p className="soft">{say("people.noDevices")}</p> : null}
      <ul className="ruled people-list">
        {devices?.map((device) => (
          <DeviceLine key={device.id} device={device} />
        ))}
      </ul>
      {devices === undefined || isEnrolled ? null : <Enrol />}
      {isEnrolled ? <p className="soft">{say("people.handOver")}</p> : null}
    </section>
  );
}

function useDeviceChange<Typed>(change: (typed: Typed) => Promise<unknown>, done: string) {
  const queryClient = useQueryClient();
  const notify = useNotify();
  return useMutation({
    mutationFn: change,
    onSuccess: async () => {
      notify({ text: done });
      await queryClient.invalidateQueries({ queryKey: devicesQuery.queryKey });
      await queryClient.invalidateQueries({ queryKey: signInQuery.queryKey });
      focusIfLost();
    },
  });
}

function DeviceLine({ device: { id, name, enrolledBy, lastSeenAt, isThis } }: { device: Device }) {
  const venue = useVenue();
  const remove = useDeviceChange(
    () => answerOf(server.devices[":id"].remove.$post({ param: { id: String(id) } })),
    say("people.deviceRemoved", { name }),
  );
  const used =
    lastSeenAt === null
      ? say("people.deviceNotUsed")
      : say("people.lastUsed", { at: formatMoment(lastSeenAt, venue) });
  return (
    <li>
      <strong>{name}</strong>{" "}
      <span className="soft">
        {say(isThis ? "people.thisEnrolledBy" : "people.enrolledBy", { by: enrolledBy, used })}
      </span>
      <div className="person-acts">
        <Button aria-label={say("people.removeNamed", { name })} onClick={() => remove.mutate(undefined)}>
          {say("people.remove")}
        </Button>
      </div>
      <Problems error={remove.error} />
    </li>
  );
}

function Enrol() {
  const [name, setName] = useState("");
  const enrol = useDeviceChange(
    () => answerOf(server.devices.$post({ json: { name } })),
    say("people.enrolled"),
  );
  const submit = (event: FormEvent) => {
    event.preventDefault();
    enrol.mutate(undefined);
  };
  return (
    <form className="field-row person-add" onSubmit={submit}>
      <Field
        label={say("people.deviceName")}
        placeholder={say("people.deviceNameAs")}
        required
        maxLength={80}
        value={name}
        onChange={(event) => setName(event.target.value)}
      />
      <Button type="submit" disabled={enrol.isPending}>
        {say("people.enrol")}
      </Button>
      <Problems error={enrol.error} />
    </form>
  );
}

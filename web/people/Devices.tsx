import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { type FormEvent, useState } from "react";
import { answerOf, server } from "../api.ts";
import { formatMoment } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useVenue } from "../shell/venue.tsx";
import { type Device, devicesQuery } from "./people-queries.ts";
import { signInQuery } from "./signed-in.ts";

/** Phones and tablets on which a PIN counts; this one can be made one of them. */
export function Devices() {
  const { data: devices, error, refetch } = useQuery(devicesQuery);
  const isEnrolled = devices?.some(({ isThis }) => isThis) ?? false;
  return (
    <section>
      <h2>Devices on which a PIN counts</h2>
      {error === null ? null : <Problems error={error} onRetry={() => void refetch()} />}
      {devices?.length === 0 ? (
        <p className="soft">None yet: sign in on a phone of the bar and enrol it.</p>
      ) : null}
      <ul className="ruled people-list">
        {devices?.map((device) => (
          <DeviceLine key={device.id} device={device} />
        ))}
      </ul>
      {devices === undefined || isEnrolled ? null : <Enrol />}
      {isEnrolled ? (
        <p className="soft">Sign out when you hand this device over; then its names stand ready.</p>
      ) : null}
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
    },
  });
}

function DeviceLine({ device: { id, name, enrolledBy, lastSeenAt, isThis } }: { device: Device }) {
  const venue = useVenue();
  const remove = useDeviceChange(
    () => answerOf(server.devices[":id"].remove.$post({ param: { id: String(id) } })),
    `No PIN counts on ${name} any more.`,
  );
  const seen = lastSeenAt === null ? "not used yet" : `last used ${formatMoment(lastSeenAt, venue)}`;
  return (
    <li>
      <strong>{name}</strong>{" "}
      <span className="soft">
        {isThis ? "this device, " : ""}enrolled by {enrolledBy}, {seen}
      </span>
      <div className="person-acts">
        <Button aria-label={`Remove ${name}`} onClick={() => remove.mutate(undefined)}>
          Remove
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
    "This device is enrolled: a PIN counts here.",
  );
  const submit = (event: FormEvent) => {
    event.preventDefault();
    enrol.mutate(undefined);
  };
  return (
    <form className="field-row person-add" onSubmit={submit}>
      <Field
        label="Name of this device"
        placeholder="Bar phone"
        required
        maxLength={80}
        value={name}
        onChange={(event) => setName(event.target.value)}
      />
      <Button type="submit" disabled={enrol.isPending}>
        Enrol this device
      </Button>
      <Problems error={enrol.error} />
    </form>
  );
}

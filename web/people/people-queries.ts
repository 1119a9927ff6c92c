import { queryOptions } from "@tanstack/react-query";
import { type Answer, answerOf, server } from "../api.ts";

export type Person = Answer<typeof server.people.$get>[number];
export type Device = Answer<typeof server.devices.$get>[number];
export type Token = Answer<typeof server.tokens.$get>[number];

export const peopleQuery = queryOptions({
  queryKey: ["people"],
  queryFn: () => answerOf(server.people.$get()),
});

export const devicesQuery = queryOptions({
  queryKey: ["devices"],
  queryFn: () => answerOf(server.devices.$get()),
});

export const tokensQuery = queryOptions({
  queryKey: ["tokens"],
  queryFn: () => answerOf(server.tokens.$get()),
});

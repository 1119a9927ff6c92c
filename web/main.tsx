import "@fontsource-variable/literata/opsz.css";
import "./look/tokens.css";
import "./look/base.css";
import "./look/print.css";
import { QueryClient, QueryClientProvider } from "@tanstack/react-query";
import { RouterProvider } from "@tanstack/react-router";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { ProblemError } from "./api.ts";
import { keepScreens } from "./offline/register.ts";
import { router } from "./routes.tsx";
import { applyTheme, savedTheme } from "./shell/theme.ts";
import { loadFirstTexts } from "./texts/load.ts";

applyTheme(savedTheme());
keepScreens();

const queryClient = new QueryClient({
  defaultOptions: {
    // A bar's own server answers without the internet, so what the browser thinks of the network does not count.
    mutations: { networkMode: "always" },
    queries: {
      networkMode: "always",
      staleTime: 10_000,
      // A refusal does not change by asking again; a lost connection may.
      retry: (failures, error) => failures < 2 && !(error instanceof ProblemError && error.status > 0),
    },
  },
});

const root = document.getElementById("root");
if (root === null) throw new Error("index.html has no #root.");
void loadFirstTexts().then(() =>
  createRoot(root).render(
    <StrictMode>
      <QueryClientProvider client={queryClient}>
        <RouterProvider router={router} />
      </QueryClientProvider>
    </StrictMode>,
  ),
);

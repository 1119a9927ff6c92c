import "./shell.css";
import { useQuery } from "@tanstack/react-query";
import { Link, lazyRouteComponent, Outlet } from "@tanstack/react-router";
import { ProblemError } from "../api.ts";
import { Busy } from "../parts/Busy.tsx";
import { NoticeProvider } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { venueQuery } from "../queries.ts";
import { More } from "./More.tsx";
import { DESTINATIONS } from "./nav.ts";
import { ThemeSwitch } from "./ThemeSwitch.tsx";
import { VenueProvider } from "./venue.tsx";

/** Needed once in a bar's life, so no other visit loads it. */
const FirstSteps = lazyRouteComponent(() => import("./FirstSteps.tsx"), "FirstSteps");

/** The frame of every screen: skip link, navigation, main landmark and the place where notices appear. */
export function Shell() {
  const { data: venue } = useQuery(venueQuery);
  return (
    <NoticeProvider>
      <a className="skip-link" href="#main">
        Skip to the page
      </a>
      <header className="shell-bar">
        <Link to="/" className="shell-name">
          Ullage
          {venue === undefined ? null : <span className="shell-venue">{venue.name}</span>}
        </Link>
        <TopLinks />
        <ThemeSwitch />
      </header>
      <main id="main" tabIndex={-1}>
        <VenueGate />
      </main>
      <BottomBar />
    </NoticeProvider>
  );
}

function VenueGate() {
  const { data: venue, error, refetch } = useQuery(venueQuery);
  if (venue !== undefined) {
    return (
      <VenueProvider venue={venue}>
        <Outlet />
      </VenueProvider>
    );
  }
  if (error instanceof ProblemError && [404, 422].includes(error.status)) return <FirstSteps />;
  if (error !== null) return <Problems error={error} onRetry={() => void refetch()} />;
  return <Busy what="Opening the book" />;
}

function TopLinks() {
  return (
    <nav className="shell-top" aria-label="Screens">
      <ul>
        {DESTINATIONS.map(({ to, label }) => (
          <li key={to}>
            <Link to={to} activeOptions={{ exact: to === "/" }}>
              {label}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}

function BottomBar() {
  return (
    <nav className="shell-nav" aria-label="Screens">
      <ul>
        {DESTINATIONS.filter(({ onPhone }) => onPhone).map(({ to, label, icon: Icon }) => (
          <li key={to}>
            <Link to={to} activeOptions={{ exact: to === "/" }}>
              <Icon aria-hidden="true" size={22} strokeWidth={1.6} />
              {label}
            </Link>
          </li>
        ))}
        <li>
          <More />
        </li>
      </ul>
    </nav>
  );
}

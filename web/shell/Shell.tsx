import "./shell.css";
import { useQuery } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import { NoticeProvider } from "../parts/Notice.tsx";
import { useSignedIn } from "../people/signed-in.ts";
import { venueQuery } from "../queries.ts";
import { Gate } from "./Gate.tsx";
import { More } from "./More.tsx";
import { useDestinations } from "./nav.ts";
import { ShellIcon } from "./ShellIcon.tsx";
import { ThemeSwitch } from "./ThemeSwitch.tsx";

/** The frame of every screen: skip link, navigation, main landmark and the place where notices appear. */
export function Shell() {
  const actor = useSignedIn();
  const { data: venue } = useQuery({ ...venueQuery, enabled: actor !== null });
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
        {actor === null ? null : (
          <Link to="/me" className="shell-me" aria-label={`Signed in as ${actor.name}`}>
            {actor.via === "demo" ? "Demo" : actor.name}
          </Link>
        )}
        <ThemeSwitch />
      </header>
      <main id="main" tabIndex={-1}>
        <Gate />
      </main>
      {actor === null ? null : <BottomBar />}
    </NoticeProvider>
  );
}

function TopLinks() {
  return (
    <nav className="shell-top" aria-label="Screens">
      <ul>
        {useDestinations().map(({ to, label }) => (
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
        {useDestinations()
          .filter(({ onPhone }) => onPhone)
          .map(({ to, label, icon }) => (
            <li key={to}>
              <Link to={to} activeOptions={{ exact: to === "/" }}>
                <ShellIcon name={icon} />
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

import "./shell.css";
import { useQuery } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import { NoticeProvider } from "../parts/Notice.tsx";
import { useSignedIn } from "../people/signed-in.ts";
import { venueQuery } from "../queries.ts";
import { say } from "../texts/say.ts";
import { Gate } from "./Gate.tsx";
import { LanguageSwitch } from "./LanguageSwitch.tsx";
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
        {say("shell.skip")}
      </a>
      <header className="shell-bar">
        <Link to="/" className="shell-name">
          Ullage
          {venue === undefined ? null : <span className="shell-venue">{venue.name}</span>}
        </Link>
        <TopLinks />
        {actor === null ? null : (
          <Link to="/me" className="shell-me" aria-label={say("shell.signedInAs", { name: actor.name })}>
            {actor.via === "demo" ? say("shell.demo") : actor.name}
          </Link>
        )}
        <ThemeSwitch />
        <LanguageSwitch />
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
    <nav className="shell-top" aria-label={say("shell.screens")}>
      <ul>
        {useDestinations().map(({ to, name }) => (
          <li key={to}>
            <Link to={to} activeOptions={{ exact: to === "/" }}>
              {say(`shell.${name}`)}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}

function BottomBar() {
  return (
    <nav className="shell-nav" aria-label={say("shell.screens")}>
      <ul>
        {useDestinations()
          .filter(({ onPhone }) => onPhone)
          .map(({ to, name }) => (
            <li key={to}>
              <Link to={to} activeOptions={{ exact: to === "/" }}>
                <ShellIcon name={name} />
                {say(`shell.${name}`)}
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

import { Link } from "@tanstack/react-router";
import { Page } from "../parts/Page.tsx";

export function NotFound() {
  return (
    <Page title="No such page" next="The address leads nowhere in this book.">
      <p>
        <Link to="/">Go to this week</Link>
      </p>
    </Page>
  );
}

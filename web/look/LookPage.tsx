import "./look.css";
import { useState } from "react";
import { Busy } from "../parts/Busy.tsx";
import { Button } from "../parts/Button.tsx";
import { Combobox } from "../parts/Combobox.tsx";
import { ConfirmDialog } from "../parts/ConfirmDialog.tsx";
import { Empty } from "../parts/Empty.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { Money } from "../parts/Money.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { Quantity } from "../parts/Quantity.tsx";
import { Uncertain, UncertainMoney } from "../parts/Uncertain.tsx";
import { Verdict } from "../parts/Verdict.tsx";
import { LevelLines } from "./LevelLines.tsx";
import { Palette } from "./Palette.tsx";

/** The parts every screen is made of, side by side, for whoever changes one. */
export function LookPage() {
  return (
    <Page
      title="Look"
      next="The palette and the parts of the screens. Change a token in look/tokens.css and see all of it here."
    >
      <Palette />
      <section>
        <h2>Words</h2>
        <p>
          Text is set to be read at arm’s length. Numbers stand in columns: 1,111.10 and 8,888.80 are equally
          wide. <a href="#main">To the top of the page</a>, <code>a command</code>,{" "}
          <span className="soft">an aside</span>.
        </p>
      </section>
      <LevelLines />
      <Numbers />
      <Controls />
      <section>
        <h2>States</h2>
        <Empty title="Nothing here yet">
          <p>An empty place says what will stand here and how to get it there.</p>
        </Empty>
        <Busy what="Reckoning" />
        <Problems
          error={new Error("deliveries.csv row 14, pack: no pack “700 ml” of “Dry gin”; it has “1 L”.")}
        />
      </section>
    </Page>
  );
}

function Numbers() {
  return (
    <section>
      <h2>Numbers</h2>
      <ul className="look-list">
        <li>
          <Quantity amount={2100} base="ml" /> ·{" "}
          <Quantity amount={1680} base="ml" containerSize={700} packName="700 ml" /> ·{" "}
          <Quantity amount={12} base="each" /> · <Quantity amount={null} base="g" />
        </li>
        <li>
          <Uncertain amount={-420} sd={61} base="ml" signed /> · <UncertainMoney amount={222} sd={61} /> ·{" "}
          <Money amount={12.5} /> · <Money amount={null} />
        </li>
        <li>
          <Verdict verdict="chase" /> · <Verdict verdict="watch" /> · <Verdict verdict="quiet" />
        </li>
      </ul>
    </section>
  );
}

const SPIRITS = ["Dry gin", "Strong gin", "White rum", "Aged rum", "Rye", "Bourbon"];

function Controls() {
  const notify = useNotify();
  const [isAsking, setAsking] = useState(false);
  const [item, setItem] = useState<string | null>(null);
  return (
    <section>
      <h2>Controls</h2>
      <div className="field-row look-controls">
        <Field label="Amount" inputMode="decimal" defaultValue="1 1/2" hint="As people write it" />
        <Field label="Refused" defaultValue="1 700" error="no amount: write it as 0.75, 3/4 or 1 1/2." />
        <Select label="Unit" options={["oz", "ml", "cl"]} />
        <Combobox
          label="Item"
          choices={SPIRITS.map((value) => ({ value, detail: "spirit" }))}
          value={item}
          onChange={setItem}
        />
      </div>
      <div className="look-buttons">
        <Button kind="main" onClick={() => setAsking(true)}>
          Ask first …
        </Button>
        <Button
          onClick={() =>
            notify({ text: "Delivery of 6 × 1 L entered.", undo: () => notify({ text: "Taken back." }) })
          }
        >
          Tell what was done
        </Button>
        <Button kind="quiet">Quiet</Button>
        <Button disabled>Not now</Button>
      </div>
      <ConfirmDialog
        isOpen={isAsking}
        title="Do it?"
        act="Do it"
        onConfirm={() => setAsking(false)}
        onCancel={() => setAsking(false)}
      >
        <p>A dialog asks once before an act that leaves the bar.</p>
      </ConfirmDialog>
    </section>
  );
}

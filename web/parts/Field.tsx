import "./field.css";
import { type InputHTMLAttributes, type ReactNode, type SelectHTMLAttributes, useId } from "react";
import { say } from "../texts/say.ts";

type Around = { label: string; hint?: ReactNode; error?: string | undefined };

type FieldProps = Around & Omit<InputHTMLAttributes<HTMLInputElement>, "id">;

/** An input with its label, a hint and, when refused, the sentence that says why. */
export function Field({ label, hint, error, className = "", ...input }: FieldProps) {
  const id = useId();
  return (
    <div className={`field ${className}`}>
      <label htmlFor={id}>{label}</label>
      <input {...input} id={id} aria-invalid={error !== undefined} aria-describedby={`${id}-more`} />
      <FieldMore id={`${id}-more`} hint={hint} error={error} />
    </div>
  );
}

type SelectProps = Around &
  Omit<SelectHTMLAttributes<HTMLSelectElement>, "id" | "children"> & {
    options: readonly (string | { value: string; label: string })[];
  };

/** A short fixed choice; for long lists of items use Combobox. */
export function Select({ label, hint, error, options, className = "", ...select }: SelectProps) {
  const id = useId();
  return (
    <div className={`field ${className}`}>
      <label htmlFor={id}>{label}</label>
      <select {...select} id={id} aria-invalid={error !== undefined} aria-describedby={`${id}-more`}>
        {options.map((option) => {
          const { value, label: text } =
            typeof option === "string" ? { value: option, label: option } : option;
          return (
            <option key={value} value={value}>
              {text}
            </option>
          );
        })}
      </select>
      <FieldMore id={`${id}-more`} hint={hint} error={error} />
    </div>
  );
}

/** Why an input is refused; the word before it says without colour that something is to be mended. */
function FieldError({ error }: { error: string }) {
  return (
    <strong className="field-error" data-check={say("parts.check")}>
      {error}
    </strong>
  );
}

function FieldMore({ id, hint, error }: { id: string; hint: ReactNode; error: string | undefined }) {
  return (
    <span id={id} className="field-more">
      {error === undefined ? hint : <FieldError error={error} />}
    </span>
  );
}

import { Component, type ComponentChildren } from 'preact';
import { type CantWorkOut, cantWorkOut } from '../domain/attempt.ts';

interface ContainedProps {
  /** What is drawn here, to stand before "can’t be shown": "This part". */
  readonly what: string;
  /** What it is drawn from: when that changes, it is tried again. */
  readonly of: unknown;
  readonly children: ComponentChildren;
}

interface ContainedState {
  readonly failed?: CantWorkOut | undefined;
  readonly of: unknown;
}

/** Draws its children so that a mistake in them costs only them: the rest of the page stands, and says what is missing. */
export class Contained extends Component<ContainedProps, ContainedState> {
  override state: ContainedState = { of: this.props.of };

  static override getDerivedStateFromError(error: unknown): Partial<ContainedState> {
    return { failed: cantWorkOut(error) };
  }

  static override getDerivedStateFromProps(
    { of }: Readonly<ContainedProps>,
    before: Readonly<ContainedState>,
  ): ContainedState {
    return of === before.of ? before : { failed: undefined, of };
  }

  override componentDidCatch(error: unknown): void {
    reportError(error);
  }

  override render() {
    const { what, children } = this.props;
    const { failed } = this.state;
    if (failed === undefined) return children;
    return (
      <div class="note warning" role="alert">
        <p>
          <strong>{what} can’t be shown.</strong> {failed.message} Nothing is lost.
        </p>
      </div>
    );
  }
}

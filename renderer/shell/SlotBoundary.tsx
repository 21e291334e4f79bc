/** Where a picture cannot be drawn (no WebGL, a fault of ours), the rest of the page goes on and says why. */
import { Component, type ReactNode } from "react";

interface Props {
  readonly what: string;
  readonly children: ReactNode;
}

export class SlotBoundary extends Component<Props, { readonly reason: string | null }> {
  override state: { readonly reason: string | null } = { reason: null };

  static getDerivedStateFromError(error: unknown): { reason: string } {
    return { reason: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    if (this.state.reason === null) return this.props.children;
    return (
      <div className="slot-broken" role="alert">
        <p>
          {this.props.what} cannot be drawn here: {this.state.reason}
        </p>
        <button type="button" className="button" onClick={() => this.setState({ reason: null })}>
          Try again
        </button>
      </div>
    );
  }
}

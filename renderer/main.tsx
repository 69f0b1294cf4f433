import { render } from "solid-js/web";
import "./styles/tokens.css";
import "./styles/frame.css";
import "./styles/components.css";
import "./styles/grid.css";
import "./styles/print.css";
import { App } from "./app.tsx";
import { host } from "./host.ts";

const root = document.getElementById("app");
if (root) render(() => <App host={host} />, root);

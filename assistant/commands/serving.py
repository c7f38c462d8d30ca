"""The command that serves the pages."""

from __future__ import annotations

import errno
import socket
from pathlib import Path

import click

from assistant.cases.store import state_folder
from assistant.commands.options import shop_option, state_option
from assistant.commands.searching import bar
from assistant.errors import UserError
from assistant.shop import find_shop


@click.command()
@click.option("--host", default="127.0.0.1", show_default=True, help="The address to listen at.")
@click.option(
    "--port",
    type=click.IntRange(0, 65535),
    default=8017,
    show_default=True,
    help="0: any free one.",
)
@click.option(
    "--per-minute",
    type=click.IntRange(min=1),
    default=30,
    show_default=True,
    help="How many messages one visitor may send in a minute.",
)
@state_option
@shop_option
def serve(host: str, port: int, per_minute: int, state: Path | None, shop: Path | None) -> None:
    """Serve the customers' page and POST /api/ask, on one port, until Ctrl-C.

    Changed notes and tables are picked up within seconds. A change that cannot be read is told
    here, and the knowledge from before is served on.

    \b
    Example:
      counterhand serve
      counterhand serve --host 0.0.0.0 --port 80 --state /var/lib/counterhand
    """
    import uvicorn

    from assistant.pages.app import app_for
    from assistant.pages.guard import Share
    from assistant.pages.live import Live
    from assistant.search.model import Model
    from assistant.settings import read_settings
    from assistant.shop import look_for_knowledge

    folder = find_shop(shop)
    look_for_knowledge(folder)
    model = Model(read_settings(folder / "knowledge" / "shop.toml").model)

    def say(sentence: str) -> None:
        click.echo(f"counterhand: {sentence}", err=True)

    listening = _listening(host, port)
    with listening, bar() as progress:
        live = Live(folder, model, say, progress)
        app = app_for(live, state_folder(state), Share(many=per_minute))
        where, found = listening.getsockname()[:2]
        shown = f"[{where}]" if ":" in where else where
        say(f"{live.now.shop.settings.name} is served at http://{shown}:{found}/ (Ctrl-C ends it).")
        config = uvicorn.Config(
            app, log_level="warning", server_header=False, timeout_graceful_shutdown=10
        )
        uvicorn.Server(config).run(sockets=[listening])


def _listening(host: str, port: int) -> socket.socket:
    """A socket that nobody else listens at.

    Raises:
        UserError: the address cannot be had.
    """
    family = socket.AF_INET6 if ":" in host else socket.AF_INET
    made = socket.socket(family, socket.SOCK_STREAM)
    made.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        made.bind((host, port))
    except OSError as error:
        made.close()
        taken = error.errno == errno.EADDRINUSE
        problem = (
            "another program listens there" if taken else f"is no address here ({error.strerror})"
        )
        mend = "name another with --port" if taken else "name another with --host"
        raise UserError(f"{host}, port {port}", problem, mend) from error
    return made

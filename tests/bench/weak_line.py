"""A weak line to a server: a proxy that delays and meters all bytes, whoever in the browser asked for them.

The browser's own throttling leaves out service workers and workers; here every byte of every connection
shares one line, as over the air.
"""

import asyncio
import threading
from collections import namedtuple

Line = namedtuple("Line", ["round_trip_s", "bits_per_s"])

_PIECE = 4096


class _Lane:
    """One direction of the line, shared by all connections."""

    def __init__(self, line: Line):
        self._line = line
        self._free_at = 0.0
        self.carried = 0

    def arrival(self, size: int) -> float:
        """Return when the last of `size` bytes arrives that are handed over now."""
        now = asyncio.get_running_loop().time()
        self._free_at = max(now, self._free_at) + size * 8 / self._line.bits_per_s
        self.carried += size
        return self._free_at + self._line.round_trip_s / 2


class WeakLine:
    """Listens at `port` of this machine and passes everything on to `server_port`, over `line`."""

    def __init__(self, port: int, server_port: int, line: Line):
        """Begin to listen."""
        self._port, self._server_port, self._line = port, server_port, line
        self._loop = asyncio.new_event_loop()
        self._up, self._down = _Lane(line), _Lane(line)
        self.connections = 0
        ready = threading.Event()
        self._thread = threading.Thread(target=self._run, args=(ready,), daemon=True)
        self._thread.start()
        ready.wait()

    @property
    def down_bytes(self) -> int:
        """What has come down to the phone so far."""
        return self._down.carried

    def close(self) -> None:
        """Cut the line."""
        self._loop.call_soon_threadsafe(self._loop.stop)
        self._thread.join()
        self._loop.close()

    def _run(self, ready: threading.Event) -> None:
        asyncio.set_event_loop(self._loop)
        serving = asyncio.start_server(self._connect, "127.0.0.1", self._port)
        server = self._loop.run_until_complete(serving)
        ready.set()
        self._loop.run_forever()
        server.close()
        for task in asyncio.all_tasks(self._loop):
            task.cancel()
        self._loop.run_until_complete(asyncio.sleep(0))

    async def _connect(self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        self.connections += 1
        await asyncio.sleep(self._line.round_trip_s)  # the handshake of TCP
        there, back = await asyncio.open_connection("127.0.0.1", self._server_port)
        await asyncio.gather(
            _carry(reader, back, self._up), _carry(there, writer, self._down), return_exceptions=True
        )


async def _carry(reader: asyncio.StreamReader, writer: asyncio.StreamWriter, lane: _Lane) -> None:
    on_the_way: asyncio.Queue = asyncio.Queue()

    async def deliver() -> None:
        while (parcel := await on_the_way.get()) is not None:
            arrives, piece = parcel
            await asyncio.sleep(max(0.0, arrives - asyncio.get_running_loop().time()))
            writer.write(piece)
            await writer.drain()
        writer.close()

    delivering = asyncio.ensure_future(deliver())
    try:
        while piece := await reader.read(_PIECE):
            on_the_way.put_nowait((lane.arrival(len(piece)), piece))
            # The next piece of this connection has to queue behind those of the others.
            await asyncio.sleep(0)
    finally:
        on_the_way.put_nowait(None)
        await delivering

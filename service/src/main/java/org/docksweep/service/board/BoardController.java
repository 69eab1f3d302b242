package org.docksweep.service.board;

import jakarta.annotation.security.RolesAllowed;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.BoardEvent;
import org.docksweep.contract.Page;
import org.docksweep.service.web.Refusal;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;

@RestController
@RolesAllowed("DOCK")
class BoardController {
    private final BoardFeed feed;
    private final Listeners listeners;

    BoardController(BoardFeed feed, Listeners listeners) {
        this.feed = feed;
        this.listeners = listeners;
    }

    /** For those who would rather ask: what changed since {@code after}; without it, only where to begin. */
    @GetMapping(path = ApiPaths.BOARD_EVENTS, produces = MediaType.APPLICATION_JSON_VALUE)
    Page<BoardEvent> ask(@RequestParam(required = false) Long after) {
        BoardFeed.Part part = feed.after(after == null ? feed.now() : position(Long.toString(after), "after"));
        return new Page<>(part.events(), Long.toString(part.position()));
    }

    /** A stream by WHATWG's server-sent events; goes on after {@code Last-Event-ID}. */
    @GetMapping(path = ApiPaths.BOARD_EVENTS, produces = MediaType.TEXT_EVENT_STREAM_VALUE)
    SseEmitter listen(@RequestHeader(name = "Last-Event-ID", defaultValue = "") String lastEventId) {
        return listeners.open(lastEventId.isEmpty() ? feed.now() : position(lastEventId, "Last-Event-ID"));
    }

    private static long position(String text, String field) {
        try {
            long position = Long.parseLong(text);
            if (position >= 0) {
                return position;
            }
        } catch (NumberFormatException e) {
            // Refused below, as a negative number is.
        }
        throw Refusal.badField(
                field, "must be the number of an event, but is not", "Use the id of the last event, or leave it out.");
    }
}

package org.docksweep.service.board;

import java.io.IOException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.docksweep.contract.BoardEvent;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.service.web.Refusal;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.event.ContextClosedEvent;
import org.springframework.context.event.EventListener;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;

/**
 * Those who listen. Each has a thread that looks for news twice a second, so that a slow one keeps nobody waiting; hence
 * there may be only so many. After {@link #LASTS_S} a stream ends and the listener comes again, with its token, which
 * may have been revoked meanwhile.
 */
@Component
class Listeners {
    private static final long LASTS_S = 300;
    private static final long LOOK_EVERY_MS = 500;
    private static final long SIGN_OF_LIFE_EVERY_MS = 15_000;
    private static final long COME_AGAIN_AFTER_MS = 1_000;

    private final BoardFeed feed;
    private final ExecutorService threads;

    Listeners(BoardFeed feed, @Value("${docksweep.board.listeners:50}") int most) {
        this.feed = feed;
        this.threads =
                new ThreadPoolExecutor(0, Math.max(1, most), 5, TimeUnit.SECONDS, new SynchronousQueue<>(), work -> {
                    Thread thread = new Thread(work, "board");
                    thread.setDaemon(true);
                    return thread;
                });
    }

    SseEmitter open(long position) {
        // Ended by its thread; the container's own limit is only for one that hangs in a write.
        SseEmitter emitter = new SseEmitter(TimeUnit.SECONDS.toMillis(2 * LASTS_S));
        try {
            threads.execute(() -> tell(emitter, position));
        } catch (RejectedExecutionException e) {
            throw Refusal.of(
                    ProblemTypes.TRY_LATER,
                    "Too many listen",
                    503,
                    "as many boards listen to this service as it allows (docksweep.board.listeners)",
                    "Ask without Accept: text/event-stream every few seconds, or come again later.");
        }
        return emitter;
    }

    private void tell(SseEmitter emitter, long from) {
        long position = from;
        long begun = System.nanoTime();
        long lastWord = begun;
        try {
            emitter.send(SseEmitter.event().comment("listening").reconnectTime(COME_AGAIN_AFTER_MS));
            while (System.nanoTime() - begun < TimeUnit.SECONDS.toNanos(LASTS_S)) {
                BoardFeed.Part news = feed.after(position);
                for (BoardEvent event : news.events()) {
                    emitter.send(SseEmitter.event()
                            .id(Long.toString(event.number()))
                            .name("changed")
                            .data(event, MediaType.APPLICATION_JSON));
                    lastWord = System.nanoTime();
                }
                boolean more = news.position() > position && !news.events().isEmpty();
                position = news.position();
                if (System.nanoTime() - lastWord > TimeUnit.MILLISECONDS.toNanos(SIGN_OF_LIFE_EVERY_MS)) {
                    emitter.send(SseEmitter.event().comment("still here"));
                    lastWord = System.nanoTime();
                }
                if (!more) {
                    TimeUnit.MILLISECONDS.sleep(LOOK_EVERY_MS);
                }
            }
            emitter.complete();
        } catch (InterruptedException e) {
            // The service stops; listeners come again to another one, or later.
            emitter.complete();
            Thread.currentThread().interrupt();
        } catch (IOException e) {
            // The listener is gone; the container finds that out by itself and ends the request.
            return;
        } catch (IllegalStateException e) {
            // The request ended before, by its limit.
            emitter.completeWithError(e);
        } catch (RuntimeException e) {
            emitter.completeWithError(e);
            throw e;
        }
    }

    /** Before the server waits for requests under way. */
    @EventListener(ContextClosedEvent.class)
    void stop() {
        threads.shutdownNow();
    }
}

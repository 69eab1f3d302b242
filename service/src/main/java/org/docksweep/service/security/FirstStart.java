package org.docksweep.service.security;

import org.docksweep.service.store.Transactions;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/** Prints the code of the first start, as long as no token was issued. */
@Component
class FirstStart {
    private static final Logger LOG = LoggerFactory.getLogger(FirstStart.class);

    private final Tokens tokens;
    private final Transactions transactions;

    FirstStart(Tokens tokens, Transactions transactions) {
        this.tokens = tokens;
        this.transactions = transactions;
    }

    @EventListener(ApplicationReadyEvent.class)
    void printCode() {
        if (!tokens.firstStart()) {
            return;
        }
        transactions
                .write(tokens::firstStartCode)
                .ifPresent(code -> LOG.warn(
                        "Nobody has a token yet. One-time manager code: {}  Use it once, as bearer token, to issue the"
                                + " first manager token: POST /api/kiosk-tokens {\"name\":\"...\",\"role\":\"MANAGER\"}",
                        code));
    }
}

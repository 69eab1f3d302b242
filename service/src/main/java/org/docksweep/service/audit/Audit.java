package org.docksweep.service.audit;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.docksweep.contract.AuditEntry;
import org.docksweep.service.security.SignedOn;
import org.docksweep.service.store.AddedRows;
import org.docksweep.service.store.WriteWitness;
import org.slf4j.MDC;
import org.springframework.context.event.EventListener;
import org.springframework.data.domain.Limit;
import org.springframework.security.authorization.event.AuthorizationDeniedEvent;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.context.request.RequestContextHolder;
import org.springframework.web.context.request.ServletRequestAttributes;

/**
 * Writes the log. What is stored is noted in the same transaction, so that no write is ever without its line. Requests
 * without a known token leave no line: a stranger could fill the disk with them; the service's own log tells of these.
 */
@Service
public class Audit implements WriteWitness {
    private final AuditRows rows;
    private final AddedRows added;
    private final Clock clock;

    Audit(AuditRows rows, AddedRows added, Clock clock) {
        this.rows = rows;
        this.added = added;
        this.clock = clock;
    }

    @Override
    @Transactional(propagation = Propagation.MANDATORY)
    public void written() {
        // Without a request it is the service's own doing at its start.
        request()
                .ifPresent(r -> add(
                        signedOn(SecurityContextHolder.getContext().getAuthentication()),
                        r,
                        AuditEntry.Outcome.STORED));
    }

    @EventListener
    @Transactional(propagation = Propagation.REQUIRES_NEW)
    public void refused(AuthorizationDeniedEvent<?> event) {
        SignedOn who = signedOn(event.getAuthentication().get());
        if (who != null) {
            request().ifPresent(r -> add(who, r, AuditEntry.Outcome.REFUSED));
        }
    }

    /**
     * Notes a sign-on or its refusal, within the caller's transaction.
     *
     * @param name the person, or the kiosk when the badge is nobody's
     * @param kiosk kiosk it was tried at
     * @param personId the person, or null
     * @param outcome how it ended
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public void signOn(String name, String kiosk, UUID personId, AuditEntry.Outcome outcome) {
        request().ifPresent(r -> add(new SignedOn(name, List.of(), kiosk, personId, null), r, outcome));
    }

    private static Optional<HttpServletRequest> request() {
        return RequestContextHolder.getRequestAttributes() instanceof ServletRequestAttributes attributes
                ? Optional.of(attributes.getRequest())
                : Optional.empty();
    }

    private static SignedOn signedOn(Authentication authentication) {
        return authentication != null && authentication.getDetails() instanceof SignedOn who ? who : null;
    }

    private void add(SignedOn who, HttpServletRequest request, AuditEntry.Outcome outcome) {
        Object[] line = {
            clock.instant(),
            AuditRow.cut(who == null ? "nobody" : who.name(), AuditRow.LONGEST_NAME),
            who == null ? null : who.kiosk(),
            who == null ? null : who.personId(),
            request.getMethod(),
            AuditRow.cut(request.getRequestURI(), AuditRow.LONGEST_TARGET),
            outcome,
            MDC.get(RequestIdFilter.MDC_KEY)
        };
        added.later(AuditRow.INSERT, List.<Object[]>of(line));
    }

    /**
     * Lines of the log.
     *
     * @param number number before the first
     * @param limit most lines
     * @return in order
     */
    @Transactional(readOnly = true)
    public List<AuditEntry> entriesAfter(long number, int limit) {
        return after(number, limit).stream().map(AuditRow::entry).toList();
    }

    /**
     * The last line.
     *
     * @return its number, 0 without any
     */
    @Transactional(readOnly = true)
    public long newest() {
        return rows.newest();
    }

    @Transactional(readOnly = true)
    List<AuditRow> after(long number, int limit) {
        return rows.findByNumberGreaterThanOrderByNumber(number, Limit.of(limit));
    }
}

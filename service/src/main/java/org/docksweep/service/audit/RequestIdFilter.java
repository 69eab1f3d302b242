package org.docksweep.service.audit;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.UUID;
import org.slf4j.MDC;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.context.request.RequestContextHolder;
import org.springframework.web.context.request.ServletRequestAttributes;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Gives every request an id that stands in the logs, in the audit log and in the answer: the one the kiosk sent in
 * {@code X-Request-Id}, if it is plain, or a new one. Runs before everything, refusals included.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE)
class RequestIdFilter extends OncePerRequestFilter {
    static final String HEADER = "X-Request-Id";
    static final String MDC_KEY = "requestId";

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        String sent = request.getHeader(HEADER);
        String id = sent != null && sent.matches("[A-Za-z0-9._-]{1,64}")
                ? sent
                : UUID.randomUUID().toString();
        response.setHeader(HEADER, id);
        MDC.put(MDC_KEY, id);
        // The security chain, which runs before Spring's own dispatcher, needs the request for the audit log too.
        RequestContextHolder.setRequestAttributes(new ServletRequestAttributes(request, response));
        try {
            chain.doFilter(request, response);
        } finally {
            RequestContextHolder.resetRequestAttributes();
            MDC.remove(MDC_KEY);
        }
    }
}

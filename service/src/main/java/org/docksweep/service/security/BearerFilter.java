package org.docksweep.service.security;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.springframework.http.HttpHeaders;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.authority.SimpleGrantedAuthority;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.filter.OncePerRequestFilter;

/** Reads {@code Authorization: Bearer ...} (RFC 6750). An unknown token signs nobody on; the chain then refuses. */
final class BearerFilter extends OncePerRequestFilter {
    private static final String SCHEME = "Bearer ";
    private static final int LONGEST = 512;

    private final Tokens tokens;

    BearerFilter(Tokens tokens) {
        this.tokens = tokens;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        token(request).flatMap(tokens::holder).ifPresent(BearerFilter::signOn);
        chain.doFilter(request, response);
    }

    private static Optional<String> token(HttpServletRequest request) {
        return Optional.ofNullable(request.getHeader(HttpHeaders.AUTHORIZATION))
                .filter(h -> h.regionMatches(true, 0, SCHEME, 0, SCHEME.length()) && h.length() <= LONGEST)
                .map(h -> h.substring(SCHEME.length()).strip())
                .filter(t -> !t.isEmpty());
    }

    private static void signOn(Tokens.Holder holder) {
        // The bench may do what the dock may do, a manager what both may do.
        List<String> roles = switch (holder.role()) {
            case MANAGER -> List.of("ROLE_MANAGER", "ROLE_BENCH", "ROLE_DOCK");
            case BENCH -> List.of("ROLE_BENCH", "ROLE_DOCK");
            case DOCK -> List.of("ROLE_DOCK");
            case SETUP -> List.of("ROLE_SETUP");
        };
        SecurityContext context = SecurityContextHolder.createEmptyContext();
        context.setAuthentication(UsernamePasswordAuthenticationToken.authenticated(
                holder.name(),
                null,
                roles.stream().map(SimpleGrantedAuthority::new).toList()));
        SecurityContextHolder.setContext(context);
    }
}

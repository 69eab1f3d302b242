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

    private final List<BearerSource> sources;

    BearerFilter(List<BearerSource> sources) {
        this.sources = List.copyOf(sources);
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        token(request).flatMap(this::holder).ifPresent(BearerFilter::signOn);
        chain.doFilter(request, response);
    }

    private Optional<SignedOn> holder(String token) {
        return sources.stream().flatMap(s -> s.holder(token).stream()).findFirst();
    }

    private static Optional<String> token(HttpServletRequest request) {
        return Optional.ofNullable(request.getHeader(HttpHeaders.AUTHORIZATION))
                .filter(h -> h.regionMatches(true, 0, SCHEME, 0, SCHEME.length()) && h.length() <= LONGEST)
                .map(h -> h.substring(SCHEME.length()).strip())
                .filter(t -> !t.isEmpty());
    }

    private static void signOn(SignedOn holder) {
        UsernamePasswordAuthenticationToken signedOn = UsernamePasswordAuthenticationToken.authenticated(
                holder.name(),
                null,
                holder.roles().stream().map(SimpleGrantedAuthority::new).toList());
        signedOn.setDetails(holder);
        SecurityContext context = SecurityContextHolder.createEmptyContext();
        context.setAuthentication(signedOn);
        SecurityContextHolder.setContext(context);
    }
}

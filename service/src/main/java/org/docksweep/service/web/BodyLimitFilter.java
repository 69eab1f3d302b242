package org.docksweep.service.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ReadListener;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletInputStream;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Refuses bodies that are too large: by their announced length before a byte is read, otherwise as soon as the limit is
 * passed. Runs after the security chain, so that strangers cannot make the service read anything.
 */
@Component
@Order(0)
@EnableConfigurationProperties(BodyLimits.class)
class BodyLimitFilter extends OncePerRequestFilter {
    private final BodyLimits limits;
    private final ProblemWriter problems;

    BodyLimitFilter(BodyLimits limits, ProblemWriter problems) {
        this.limits = limits;
        this.problems = problems;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        long limit = limits.bytesFor(request.getContentType());
        if (request.getContentLengthLong() > limit) {
            problems.write(request, response, Refusal.tooLarge(limit));
            return;
        }
        if (request.getContentType() != null && request.getContentType().indexOf('*') >= 0) {
            // A body is of one type; Spring takes a wildcard here for a defect of the program.
            problems.write(request, response, ProblemAdvice.ofStatus(415, request));
            return;
        }
        chain.doFilter(new Bounded(request, limit), response);
    }

    private static final class Bounded extends HttpServletRequestWrapper {
        private final long limit;

        Bounded(HttpServletRequest request, long limit) {
            super(request);
            this.limit = limit;
        }

        @Override
        public ServletInputStream getInputStream() throws IOException {
            return new BoundedStream(super.getInputStream(), limit);
        }
    }

    private static final class BoundedStream extends ServletInputStream {
        private final ServletInputStream stream;
        private final long limit;
        private long read;

        BoundedStream(ServletInputStream stream, long limit) {
            this.stream = stream;
            this.limit = limit;
        }

        @Override
        public int read() throws IOException {
            int value = stream.read();
            count(value < 0 ? 0 : 1);
            return value;
        }

        @Override
        public int read(byte[] buffer, int offset, int length) throws IOException {
            int count = stream.read(buffer, offset, length);
            count(Math.max(count, 0));
            return count;
        }

        private void count(int bytes) {
            read += bytes;
            if (read > limit) {
                throw Refusal.tooLarge(limit);
            }
        }

        @Override
        public boolean isFinished() {
            return stream.isFinished();
        }

        @Override
        public boolean isReady() {
            return stream.isReady();
        }

        @Override
        public void setReadListener(ReadListener listener) {
            stream.setReadListener(listener);
        }
    }
}

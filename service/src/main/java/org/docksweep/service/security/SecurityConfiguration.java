package org.docksweep.service.security;

import jakarta.servlet.DispatcherType;
import java.util.List;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.service.web.ProblemWriter;
import org.docksweep.service.web.Refusal;
import org.springframework.aop.Advisor;
import org.springframework.aop.Pointcut;
import org.springframework.aop.support.ComposablePointcut;
import org.springframework.aop.support.annotation.AnnotationClassFilter;
import org.springframework.beans.factory.config.BeanDefinition;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Role;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.security.authorization.AuthorizationEventPublisher;
import org.springframework.security.authorization.SpringAuthorizationEventPublisher;
import org.springframework.security.authorization.method.AuthorizationInterceptorsOrder;
import org.springframework.security.authorization.method.AuthorizationManagerBeforeMethodInterceptor;
import org.springframework.security.authorization.method.Jsr250AuthorizationManager;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.AbstractHttpConfigurer;
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.access.AccessDeniedHandler;
import org.springframework.security.web.authentication.UsernamePasswordAuthenticationFilter;
import org.springframework.security.web.firewall.RequestRejectedHandler;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter;
import org.springframework.web.bind.annotation.RestController;

/**
 * Closed by default: what is not named here needs a manager. Every method of a controller says by {@code RolesAllowed}
 * once more who may call it; both must agree to it.
 */
@Configuration(proxyBeanMethods = false)
class SecurityConfiguration {
    private static final String DOCK = "DOCK";
    private static final String BENCH = "BENCH";
    private static final String MANAGER = "MANAGER";

    @Bean
    SecurityFilterChain chain(HttpSecurity http, List<BearerSource> bearers, ProblemWriter problems) throws Exception {
        return http.csrf(AbstractHttpConfigurer::disable) // no cookies, hence nothing to forge
                .sessionManagement(s -> s.sessionCreationPolicy(SessionCreationPolicy.STATELESS))
                .formLogin(AbstractHttpConfigurer::disable)
                .httpBasic(AbstractHttpConfigurer::disable)
                .logout(AbstractHttpConfigurer::disable)
                .requestCache(AbstractHttpConfigurer::disable)
                .addFilterBefore(new BearerFilter(bearers), UsernamePasswordAuthenticationFilter.class)
                .headers(h -> h.contentSecurityPolicy(csp ->
                                csp.policyDirectives("default-src 'none'; base-uri 'none'; frame-ancestors 'none'"))
                        .referrerPolicy(r -> r.policy(ReferrerPolicyHeaderWriter.ReferrerPolicy.NO_REFERRER)))
                .exceptionHandling(e ->
                        e.authenticationEntryPoint(notSignedOn(problems)).accessDeniedHandler(notAllowed(problems)))
                .authorizeHttpRequests(r -> r.dispatcherTypeMatchers(DispatcherType.ERROR, DispatcherType.ASYNC)
                        .permitAll()
                        .requestMatchers(HttpMethod.GET, ApiPaths.HEALTH)
                        .permitAll()
                        .requestMatchers(HttpMethod.POST, ApiPaths.KIOSK_TOKENS)
                        .hasAnyRole(MANAGER, "SETUP")
                        .requestMatchers(
                                ApiPaths.KIOSK_TOKENS,
                                ApiPaths.KIOSK_TOKENS + "/**",
                                ApiPaths.PEOPLE,
                                ApiPaths.PEOPLE + "/**",
                                ApiPaths.AUDIT,
                                ApiPaths.AUDIT + "/**",
                                ApiPaths.EXPORT,
                                ApiPaths.RETENTION)
                        .hasRole(MANAGER)
                        .requestMatchers(ApiPaths.SIGN_ONS, ApiPaths.CURRENT_SIGN_ON)
                        .hasRole(DOCK)
                        .requestMatchers(HttpMethod.GET, ApiPaths.API + "/**", "/v3/api-docs", "/v3/api-docs/**")
                        .hasRole(DOCK)
                        .requestMatchers(
                                HttpMethod.PUT,
                                ApiPaths.CABINETS + "/*",
                                ApiPaths.CHECK_INS + "/*",
                                ApiPaths.RECORDINGS + "/*",
                                ApiPaths.COMMISSIONINGS + "/*")
                        .hasRole(DOCK)
                        .requestMatchers(
                                HttpMethod.PUT,
                                ApiPaths.CABINETS + "/*" + ApiPaths.SAFETY_TEST,
                                ApiPaths.BENCH_JOBS + "/**",
                                ApiPaths.STOCK_MOVES + "/*",
                                ApiPaths.SPARE_REPAIRS + "/*")
                        .hasRole(BENCH)
                        .requestMatchers(HttpMethod.POST, ApiPaths.RETURN_LISTS + "/*" + ApiPaths.CLOSE)
                        .hasRole(DOCK)
                        .anyRequest()
                        .hasRole(MANAGER))
                .build();
    }

    /**
     * Asks {@code RolesAllowed} at every method of every controller. What {@code EnableMethodSecurity} would add looks at
     * the methods of all beans at every start; rules stand at controllers only, a test says so.
     */
    @Bean
    @Role(BeanDefinition.ROLE_INFRASTRUCTURE)
    static Advisor rolesOfControllers(AuthorizationEventPublisher refusals) {
        Pointcut controllers = new ComposablePointcut(new AnnotationClassFilter(RestController.class));
        AuthorizationManagerBeforeMethodInterceptor roles =
                new AuthorizationManagerBeforeMethodInterceptor(controllers, new Jsr250AuthorizationManager());
        roles.setOrder(AuthorizationInterceptorsOrder.JSR250.getOrder());
        roles.setAuthorizationEventPublisher(refusals);
        return roles;
    }

    /** Tells who was refused what, for the audit log. */
    @Bean
    @Role(BeanDefinition.ROLE_INFRASTRUCTURE)
    static AuthorizationEventPublisher refusals(ApplicationEventPublisher events) {
        return new SpringAuthorizationEventPublisher(events);
    }

    private static AuthenticationEntryPoint notSignedOn(ProblemWriter problems) {
        return (request, response, e) -> {
            response.setHeader(HttpHeaders.WWW_AUTHENTICATE, "Bearer");
            problems.write(
                    request,
                    response,
                    Refusal.of(
                            ProblemTypes.NOT_SIGNED_ON,
                            "Not signed on",
                            401,
                            request.getHeader(HttpHeaders.AUTHORIZATION) == null
                                    ? "no token was sent"
                                    : "the token is not known here, or was revoked",
                            "Send Authorization: Bearer with a token a manager issued for this kiosk."));
        };
    }

    private static AccessDeniedHandler notAllowed(ProblemWriter problems) {
        return (request, response, e) -> problems.write(
                request,
                response,
                Refusal.of(
                        ProblemTypes.NOT_ALLOWED,
                        "Not allowed",
                        403,
                        "this token does not allow this",
                        "Ask a manager, or use a token with the manager role."));
    }

    /** Addresses with tricks in them (encoded slashes, control characters, dots) are refused before anything looks. */
    @Bean
    RequestRejectedHandler requestRejectedHandler(ProblemWriter problems) {
        return (request, response, e) -> problems.write(
                request,
                response,
                Refusal.of(
                        ProblemTypes.UNREADABLE,
                        "Cannot be read",
                        400,
                        "the address or a header holds characters that are not allowed",
                        "Use plain tags, codes and ids in the address."));
    }
}

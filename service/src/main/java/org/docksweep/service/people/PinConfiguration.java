package org.docksweep.service.people;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.security.crypto.factory.PasswordEncoderFactories;
import org.springframework.security.crypto.password.PasswordEncoder;

@Configuration(proxyBeanMethods = false)
class PinConfiguration {
    /** bcrypt today; a hash carries the name of its method, so that another one can follow. */
    @Bean
    PasswordEncoder pins() {
        return PasswordEncoderFactories.createDelegatingPasswordEncoder();
    }
}

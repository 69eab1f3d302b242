package org.docksweep.service.store;

import org.springframework.beans.factory.config.BeanFactoryPostProcessor;
import org.springframework.beans.factory.config.ConfigurableListableBeanFactory;
import org.springframework.beans.factory.config.DependencyDescriptor;
import org.springframework.beans.factory.support.DefaultListableBeanFactory;
import org.springframework.context.annotation.ContextAnnotationAutowireCandidateResolver;
import org.springframework.data.repository.Repository;
import org.springframework.stereotype.Component;

/**
 * Whoever needs a repository gets one that is made when it is first asked something. Spring Data does so by itself where
 * {@code bootstrap-mode} is lazy, but not with the parts that the build prepared: each start then waited for the entities
 * and made every repository before it went on.
 */
@Component
final class RepositoriesWhenAsked implements BeanFactoryPostProcessor {
    @Override
    public void postProcessBeanFactory(ConfigurableListableBeanFactory beans) {
        ((DefaultListableBeanFactory) beans).setAutowireCandidateResolver(new WhenAsked());
    }

    private static final class WhenAsked extends ContextAnnotationAutowireCandidateResolver {
        @Override
        protected boolean isLazy(DependencyDescriptor descriptor) {
            return Repository.class.isAssignableFrom(descriptor.getDependencyType()) || super.isLazy(descriptor);
        }
    }
}

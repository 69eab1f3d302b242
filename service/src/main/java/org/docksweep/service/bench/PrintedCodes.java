package org.docksweep.service.bench;

import org.springframework.data.jpa.repository.JpaRepository;

interface PrintedCodes extends JpaRepository<PrintedCode, String> {}

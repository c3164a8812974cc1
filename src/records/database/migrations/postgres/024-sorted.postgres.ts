export const postgres = `
  CREATE INDEX job_by_type ON job (lower(family_name), id);
  CREATE INDEX job_by_customer ON job (lower(customer_reference), id);
  CREATE INDEX job_by_outcome ON job (outcome, received_on, id);
  CREATE INDEX slip_by_stud ON slip (lower(stud_name), number);
  CREATE INDEX slip_by_stack ON slip (lower(stack_name), number);
  CREATE INDEX slip_by_customer ON slip (lower(customer_reference), number);
  CREATE INDEX slip_by_who ON slip (lower(who), number);
  CREATE INDEX slip_by_fits ON slip (fits, number);
`;

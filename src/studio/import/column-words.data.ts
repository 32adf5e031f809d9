// Headings as teachers write them, in English, German, French, Portuguese and Spanish; lower case, without accents.
// Common practice, no source.

import type { StudentColumn } from '#contract';

/** `name:first` and `name:last` are joined into one name. */
export const columnWords: Readonly<Record<StudentColumn | 'name:first' | 'name:last', string>> = {
  name: 'name | full name | student | student name | pupil | pupil name | learner | schuler | schulerin | schulername | eleve | nom complet | nom et prenom | aluno | aluna | nome | nome completo | alumno | alumna | nombre completo | nombre y apellidos',
  'name:first':
    'first name | firstname | forename | given name | christian name | vorname | prenom | primeiro nome | nome proprio | nombre | primer nombre',
  'name:last':
    'last name | lastname | surname | family name | second name | nachname | familienname | nom | nom de famille | apelido | sobrenome | apellido | apellidos',
  born: 'born | date of birth | birth date | birthdate | birthday | dob | d.o.b. | d.o.b | geboren | geburtsdatum | geburtstag | date de naissance | ne le | naissance | data de nascimento | nascimento | fecha de nacimiento | nacimiento',
  birthYear:
    'birth year | year of birth | year born | yob | born in | geburtsjahr | jahrgang | annee de naissance | ano de nascimento | ano de nacimiento',
  age: 'age | age in years | years old | alter | jahre | idade | edad | anos',
  instrument: 'instrument | instruments | plays | instrumento | instrumentos | instrumente',
  stage:
    'stage | level | standard | ability | niveau | stufe | kenntnisstand | nivel | estadio | etapa | grado',
  family:
    'family | families | household | sibling | siblings | sibling of | brother or sister | familie | geschwister | famille | fratrie | familia | irmaos | irmao de | hermanos | hermano de',
  contactName:
    'contact | contact name | parent | parent name | guardian | parent/guardian | parent or guardian | parents | guardians | parent/guardian name | mother/father | carer | emergency contact | eltern | elternteil | kontakt | ansprechpartner | parent responsable | responsable | contact parent | encarregado | encarregado de educacao | responsavel | contacto | tutor | padre o madre',
  contactRelation:
    'relation | relationship | relation to student | beziehung | verhaltnis | lien | lien de parente | parentesco | relacao | relacion',
  phone:
    'phone | telephone | tel | tel. | mobile | cell | cell phone | phone number | mobile number | telefon | handy | telefonnummer | mobil | telephone portable | portable | telefone | telemovel | celular | telefono | movil',
  email:
    'email | e-mail | mail | email address | e-mail address | e-mail-adresse | mailadresse | courriel | adresse e-mail | adresse mail | correio eletronico | endereco de email | correo | correo electronico',
  note: 'note | notes | comment | comments | remarks | remark | notiz | notizen | bemerkung | bemerkungen | anmerkung | remarque | remarques | commentaire | observacoes | observacao | notas | nota | observaciones | comentario | comentarios',
  // A day and time in one cell are parted on reading.
  weekday:
    'day and time | day/time | lesson day and time | lesson day/time | when | lesson | schedule | slot | tag und uhrzeit | jour et heure | dia e hora | dia y hora | weekday | day | lesson day | day of week | day of the week | wochentag | tag | unterrichtstag | jour | jour de cours | dia | dia da semana | dia de la semana',
  time: 'time | lesson time | start | start time | starts at | uhrzeit | zeit | beginn | heure | heure de cours | debut | hora | hora da aula | hora de clase | horario | inicio',
  minutes:
    'minutes | min | mins | length | duration | lesson length | lesson minutes | dauer | minuten | lange | duree | duracao | minutos | duracion',
};

namespace ReedClinic.Data.Audit;

/// <summary>What the audit tells of. OWASP ASVS 5.0: 16.3.1, 16.3.2, 16.3.3.</summary>
public enum AuditEvent
{
    /// <summary>Somebody signed in.</summary>
    SignedIn,

    /// <summary>A sign-in was refused: a wrong password, code or passkey.</summary>
    SignInRefused,

    /// <summary>An account was closed for a while after too many wrong tries.</summary>
    LockedOut,

    /// <summary>Somebody signed out, or ended a session of theirs.</summary>
    SignedOut,

    /// <summary>An account was made.</summary>
    AccountMade,

    /// <summary>The studio was opened by its first owner.</summary>
    StudioOpened,

    /// <summary>The studio's rules were changed.</summary>
    StudioChanged,

    /// <summary>A password was changed or chosen anew.</summary>
    PasswordChanged,

    /// <summary>A new password was asked for.</summary>
    PasswordAskedFor,

    /// <summary>An e-mail address was changed.</summary>
    EmailChanged,

    /// <summary>Somebody changed what they are called.</summary>
    NameChanged,

    /// <summary>A passkey was added.</summary>
    PasskeyAdded,

    /// <summary>A passkey was removed.</summary>
    PasskeyRemoved,

    /// <summary>Codes of an authenticator app are asked for from now on.</summary>
    CodesOn,

    /// <summary>Codes of an authenticator app are no longer asked for.</summary>
    CodesOff,

    /// <summary>Recovery codes were made.</summary>
    RecoveryCodesMade,

    /// <summary>A recovery code was used.</summary>
    RecoveryCodeUsed,

    /// <summary>A role was given.</summary>
    RoleGiven,

    /// <summary>A role was taken away.</summary>
    RoleTaken,

    /// <summary>An account was disabled.</summary>
    Disabled,

    /// <summary>A disabled account may be used again.</summary>
    Enabled,

    /// <summary>Somebody was invited.</summary>
    Invited,

    /// <summary>An invitation was taken back.</summary>
    InvitationWithdrawn,

    /// <summary>A one-time link was used.</summary>
    LinkUsed,

    /// <summary>A one-time link was refused: expired, used, withdrawn, unknown, or another browser's.</summary>
    LinkRefused,

    /// <summary>An operation was refused to somebody who may not do it.</summary>
    Refused,

    /// <summary>Somebody asked more often than the limits allow.</summary>
    TooMany,

    /// <summary>A guardian was asked.</summary>
    ConsentAsked,

    /// <summary>A guardian agreed.</summary>
    ConsentGiven,

    /// <summary>A guardian took their consent back.</summary>
    ConsentWithdrawn,

    /// <summary>A guardian who was asked said no.</summary>
    ConsentDeclined,

    /// <summary>A student's answer about their age was put right.</summary>
    AgeCorrected,

    /// <summary>Records were exported.</summary>
    Exported,

    /// <summary>Records were erased.</summary>
    Erased,

    /// <summary>Records were let go of because their time was over.</summary>
    LetGo,

    /// <summary>A letter was sent.</summary>
    LetterSent,

    /// <summary>A letter that had been sent was sent again, corrected.</summary>
    LetterCorrected,

    /// <summary>A private link to a letter was made, or made anew for a mail.</summary>
    LetterLinkMade,

    /// <summary>A private link to a letter was opened for the first time.</summary>
    LetterLinkOpened,

    /// <summary>A private link to a letter was closed.</summary>
    LetterLinkClosed,

    /// <summary>Somebody chose that the mail about a letter brings its PDF.</summary>
    LetterFilesOn,

    /// <summary>Somebody chose that it doesn't.</summary>
    LetterFilesOff,

    /// <summary>It was noted that reeds were posted back.</summary>
    PostedBack,

    /// <summary>It was taken back that reeds were posted back.</summary>
    PostingTakenBack,
}

namespace ReedClinic.Data.Jobs;

/// <summary>What a mail is about. Its words are made when it is sent, from this and its facts.</summary>
public enum MailKind
{
    /// <summary>A link to choose a new password.</summary>
    NewPassword,

    /// <summary>A link that shows that a new address is one's own.</summary>
    NewEmail,

    /// <summary>An invitation to teach here.</summary>
    JoinAsTeacher,

    /// <summary>An invitation to send reeds.</summary>
    JoinAsStudent,

    /// <summary>A link to start a batch without an account.</summary>
    Begin,

    /// <summary>A guardian is asked to answer for a student.</summary>
    GuardianAsked,

    /// <summary>A guardian's answer was noted.</summary>
    GuardianAnswered,

    /// <summary>Something about their sign-in changed: told so that it can't happen unnoticed.</summary>
    Notice,

    /// <summary>A letter or another piece of news is ready to be read.</summary>
    News,

    /// <summary>Reeds came that can't be played as they are, mouldy or damp; or that was told by mistake.</summary>
    Unfit,

    /// <summary>Their records will be let go of soon, unless they come by.</summary>
    LettingGo,

    /// <summary>Their records were let go of.</summary>
    Erased,

    /// <summary>Somebody asked for an account with an address that has one already.</summary>
    HaveAccount,

    /// <summary>The studio noted that a student is old enough: no guardian answers for them any more.</summary>
    FoundOldEnough,

    /// <summary>The studio noted that a student is younger than was thought: a guardian has to answer for them.</summary>
    FoundYounger,

    /// <summary>What was kept of a student was deleted: told to the guardian who answered for them.</summary>
    WardErased,

    /// <summary>A guardian's sign-in was closed: told to their student, who has to ask somebody else.</summary>
    GuardianGone,
}

/// <summary>A mail that is to be sent. It holds facts, not words, and nothing private.</summary>
/// <param name="Kind">What it is about.</param>
/// <param name="To">The address.</param>
/// <param name="Name">What the person is called; null when nobody knows.</param>
public sealed record Mail(MailKind Kind, string To, string? Name = null)
{
    /// <summary>What news are about, where they take the place of something that was sent before.</summary>
    public const string Corrected = nameof(Corrected);

    /// <summary>The secret of its one-time link, when it has one.</summary>
    public string? Secret { get; init; }

    /// <summary>A page it leads to, as a path; null when it leads nowhere or by its secret.</summary>
    public string? Path { get; init; }

    /// <summary>What happened, in a notice: the name of one of the house's words for it. Of news <see cref="Corrected"/>, or nothing.</summary>
    public string? What { get; init; }

    /// <summary>The first word of the name of the student whom a guardian's mail is about; null where it is about nobody else.</summary>
    public string? Ward { get; init; }

    /// <summary>In a student's mail about a yes: whether something is written and not sent.</summary>
    public bool Unsent { get; init; }

    /// <summary>In a student's mail about a yes: whether a batch is on its way, or has reeds here that can be worked on.</summary>
    public bool UnderWay { get; init; }

    /// <summary>In a student's mail about a yes: how many reeds stay as they are, because they came with mould.</summary>
    public int KeptApart { get; init; }

    /// <summary>The numbers of reeds that came with mould; none in any other mail.</summary>
    public IReadOnlyList<int> Mouldy { get; init; } = [];

    /// <summary>The numbers of reeds that came damp; none in any other mail.</summary>
    public IReadOnlyList<int> Damp { get; init; } = [];

    /// <summary>The numbers of reeds that a mail before this one told mould of, by mistake; none in any other mail.</summary>
    public IReadOnlyList<int> NoMould { get; init; } = [];

    /// <summary>When it happened, or until when the link is good.</summary>
    public DateTimeOffset? At { get; init; }

    /// <summary>The person it is about, whose erasure takes it along.</summary>
    public Guid? About { get; init; }

    /// <summary>Keeps the secret out of logs.</summary>
    public override string ToString() => $"{nameof(Mail)} {{ {Kind} }}";
}

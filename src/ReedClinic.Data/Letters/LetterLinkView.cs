using ReedClinic.Data.Recordings;
using ReedClinic.Domain.Letters;

namespace ReedClinic.Data.Letters;

/// <summary>The private links to a letter, as those who work here see them.</summary>
/// <param name="Links">The links, the newest first.</param>
/// <param name="MayOpen">False while none of them opens anything, because no guardian agrees or the student's sign-in is closed.</param>
/// <param name="ForGuardian">True for a younger student: a link is their guardian's to have.</param>
public sealed record LetterLinksView(IReadOnlyList<LetterLinkView> Links, bool MayOpen, bool ForGuardian);

/// <summary>A private link to a letter, without its secret.</summary>
/// <param name="Id">Which.</param>
/// <param name="MadeAt">When it was made.</param>
/// <param name="MadeBy">Who made it; null when a mail brought it, empty when they are gone.</param>
/// <param name="ExpiresAt">Until when it is good.</param>
/// <param name="ClosedAt">When it was closed; null while it wasn't.</param>
/// <param name="LastOpenedAt">When it was opened last; null while it wasn't.</param>
/// <param name="IsOpen">True while its own time isn't over and nobody closed it.</param>
public sealed record LetterLinkView(
    LetterLinkId Id, DateTimeOffset MadeAt, string? MadeBy, DateTimeOffset ExpiresAt, DateTimeOffset? ClosedAt, DateTimeOffset? LastOpenedAt, bool IsOpen);

/// <summary>A link that was made just now.</summary>
/// <param name="Id">Which.</param>
/// <param name="ExpiresAt">Until when it is good.</param>
/// <param name="Secret">Its secret, told once; null for a form that was sent again.</param>
public sealed record MadeLetterLink(LetterLinkId Id, DateTimeOffset ExpiresAt, string? Secret)
{
    /// <summary>Keeps the secret out of logs.</summary>
    public override string ToString() => $"{nameof(MadeLetterLink)} {{ {Id} }}";
}

/// <summary>What a private link opens.</summary>
/// <param name="Sent">The letter that was sent.</param>
/// <param name="Recordings">Its sounds and photographs.</param>
/// <param name="ExpiresAt">Until when the link is good.</param>
public sealed record LinkedLetter(SentLetter Sent, IReadOnlyList<RecordingView> Recordings, DateTimeOffset ExpiresAt);

using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.People;

/// <summary>
/// A person who sends reeds. A person is not an account: a batch can start without one, and an account can be joined later.
/// </summary>
public sealed class Student
{
    /// <summary>The longest e-mail address that is kept, in characters (RFC 5321: a path has at most 256 octets, two of them brackets).</summary>
    public const int LongestEmail = 254;

    /// <summary>The longest name of a country that is kept, in characters.</summary>
    public const int LongestCountry = 60;

    /// <summary>A new person.</summary>
    /// <param name="id">Made by the app.</param>
    /// <param name="name">What they like to be called, as <see cref="PersonName.Read"/> gives it.</param>
    /// <param name="account">Their sign-in, when they have one.</param>
    public Student(StudentId id, string name, AccountId? account = null)
    {
        Id = id;
        Account = account;
        Rename(name);
    }

    // For the database, which sets every property.
    private Student()
    {
    }

    /// <summary>Which person.</summary>
    public StudentId Id { get; private set; }

    /// <summary>What they like to be called.</summary>
    public string Name { get; private set; } = "";

    /// <summary>The name as it is searched.</summary>
    public string FoldedName { get; private set; } = "";

    /// <summary>Where mail reaches them, as they wrote it.</summary>
    public string? Email { get; private set; }

    /// <summary>The address as it is compared.</summary>
    public string? FoldedEmail { get; private set; }

    /// <summary>Their sign-in, when they have one.</summary>
    public AccountId? Account { get; private set; }

    /// <summary>What they play; null when they haven't said.</summary>
    public Instrument? Instrument { get; private set; }

    /// <summary>What their ensemble tunes to; null when they aren't sure.</summary>
    public Tuning? TunesTo { get; private set; }

    /// <summary>How their reeds are scraped; null when they don't know.</summary>
    public ScrapeStyle? Scrape { get; private set; }

    /// <summary>The country the reeds are posted from, as they wrote it.</summary>
    public string? Country { get; private set; }

    /// <summary>Which side of the studio's set age they say they are on; null while nobody asked.</summary>
    public AgeAnswer? Age { get; private set; }

    /// <summary>Where their guardian's answer stands; it counts only for those who need one.</summary>
    public Consent Consent { get; private set; }

    /// <summary>True when they may send reeds: old enough, or with a guardian who agreed.</summary>
    public bool MayTakePart => Consent is not Consent.Withdrawn && (Age is AgeAnswer.OldEnough || Consent is Consent.Given);

    /// <summary>True when a guardian agreed once and took it back: nothing more is done with their reeds, and they write nothing.</summary>
    public bool IsPaused => Consent is Consent.Withdrawn;

    /// <summary>
    /// True while those who work here may work on their reeds. A younger student's guardian has to agree to it at this moment: one
    /// who took it back, or whose sign-in was erased, agrees to nothing.
    /// </summary>
    public bool MayBeWorkedFor => Consent is not Consent.Withdrawn && (Age is not AgeAnswer.Younger || Consent is Consent.Given);

    /// <summary>The first word of their name: all that a stranger is told, and a guardian who is asked.</summary>
    public string FirstName => Name.Split(' ', 2)[0];

    /// <summary>What they are called on paper that others may see: the first word of the name for those who need a guardian.</summary>
    public string SharedName => Age is AgeAnswer.Younger ? FirstName : Name;

    /// <summary>Changes with every save, so that two open forms can't overwrite each other.</summary>
    public Guid Version { get; private set; }

    /// <summary>What their pitches are compared with: their ensemble's A, or A = 440 when they aren't sure.</summary>
    public CrowTarget CrowTarget => CrowTarget.OnC(TunesTo ?? Tuning.Standard);

    /// <summary>Calls this person something else.</summary>
    /// <param name="name">As <see cref="PersonName.Read"/> gives it.</param>
    public void Rename(string name)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        Name = name;
        FoldedName = Folding.Of(name);
    }

    /// <summary>Sets or clears the address that mail goes to.</summary>
    /// <param name="email">The address, or null.</param>
    public void WriteTo(string? email)
    {
        Email = string.IsNullOrWhiteSpace(email) ? null : email.Trim();
        FoldedEmail = Email is null ? null : Folding.OfEmail(Email);
    }

    /// <summary>Answers the questions that are asked once per student; null means “I don't know”.</summary>
    /// <param name="instrument">What they play.</param>
    /// <param name="tunesTo">What their ensemble tunes to.</param>
    /// <param name="scrape">How their reeds are scraped.</param>
    /// <param name="country">The country the reeds are posted from.</param>
    public void Describe(Instrument? instrument, Tuning? tunesTo, ScrapeStyle? scrape, string? country)
    {
        Instrument = instrument;
        TunesTo = tunesTo;
        Scrape = scrape;
        Country = string.IsNullOrWhiteSpace(country) ? null : country.Trim();
    }

    /// <summary>Says which side of the studio's set age they are on. Who said “younger” can't take it back alone.</summary>
    /// <param name="age">The answer.</param>
    /// <returns>False when they have said otherwise before.</returns>
    public bool SayAge(AgeAnswer age)
    {
        Age ??= age;
        return Age == age;
    }

    /// <summary>
    /// Those who work here put an answer right, or note that somebody has come of age: then no guardian decides any more,
    /// whatever they answered. For one who is younger after all it counts again.
    /// </summary>
    /// <param name="age">The answer.</param>
    /// <param name="answered">Where their guardian's answer stands; null when nobody was asked.</param>
    public void CorrectAge(AgeAnswer age, Consent? answered)
    {
        Age = age;
        Consent = age is AgeAnswer.OldEnough ? Consent.NotAsked : answered ?? Consent.NotAsked;
    }

    /// <summary>Follows what their guardian answered.</summary>
    /// <param name="consent">Where the answer stands.</param>
    public void Follow(Consent consent) => Consent = consent;

    /// <summary>Joins this person to the account they sign in with. A person who has one keeps it.</summary>
    /// <param name="account">The sign-in.</param>
    /// <returns>False when this person already has another account.</returns>
    public bool JoinAccount(AccountId account)
    {
        if (Account is not null && Account != account)
        {
            return false;
        }

        Account = account;
        return true;
    }
}

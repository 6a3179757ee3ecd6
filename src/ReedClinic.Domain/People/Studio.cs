namespace ReedClinic.Domain.People;

/// <summary>The studio itself. One installation is one studio, so there is one row, made when its first owner comes in.</summary>
public sealed class Studio
{
    /// <summary>The only identifier there is: a second studio can't be stored.</summary>
    public const int OnlyId = 1;

    /// <summary>The longest address, in UTF-16 characters.</summary>
    public const int LongestPostTo = 400;

    /// <summary>How many years records are kept unless the owner says otherwise. Our own choice: a student's progress over some seasons.</summary>
    public const int UsualKeepYears = 5;

    /// <summary>The most years that can be set.</summary>
    public const int LongestKeepYears = 30;

    /// <summary>The longest line that says whom to ask, in UTF-16 characters.</summary>
    public const int LongestContact = 200;

    /// <summary>The longest words of the owner's own about what is kept, in UTF-16 characters.</summary>
    public const int LongestPrivacyWords = 8_000;

    /// <summary>Opens the studio.</summary>
    /// <param name="name">What the studio is called in letters.</param>
    /// <param name="firstOwner">The account that opened it.</param>
    /// <param name="openedAt">When.</param>
    public Studio(string name, AccountId firstOwner, DateTimeOffset openedAt)
    {
        Name = name;
        FirstOwner = firstOwner;
        OpenedAt = openedAt;
    }

    /// <summary>Always <see cref="OnlyId"/>.</summary>
    public int Id { get; private set; } = OnlyId;

    /// <summary>What the studio is called in letters.</summary>
    public string Name { get; private set; }

    /// <summary>The account that opened it.</summary>
    public AccountId FirstOwner { get; private set; }

    /// <summary>When it was opened.</summary>
    public DateTimeOffset OpenedAt { get; private set; }

    /// <summary>The address that parcels are posted to, on several lines; null until the owner has said it.</summary>
    public string? PostTo { get; private set; }

    /// <summary>The address that people write mail to; null until the owner has said it.</summary>
    public string? WriteTo { get; private set; }

    /// <summary>True when people may make a student's account without being invited.</summary>
    public bool SignUpOpen { get; private set; } = true;

    /// <summary>The age below which a guardian has to agree, in years; null until the owner has settled it.</summary>
    public int? ConsentAge { get; private set; }

    /// <summary>How many years after the last sign of life a student's records are kept.</summary>
    public int KeepYears { get; private set; } = UsualKeepYears;

    /// <summary>Whom to ask about what is kept, as the owner wrote it; null until they did.</summary>
    public string? PrivacyContact { get; private set; }

    /// <summary>What the owner adds to the page about what is kept, in Markdown; null when nothing.</summary>
    public string? PrivacyWords { get; private set; }

    /// <summary>What teachers said of likely causes before this counts no more; null where all of it does.</summary>
    public DateTimeOffset? CausesCountSince { get; private set; }

    /// <summary>Changes with every change.</summary>
    public Guid Version { get; private set; }

    /// <summary>Says what the studio is called, where parcels are posted to and where mail is written to.</summary>
    /// <param name="name">The name, as <see cref="PersonName"/> reads it.</param>
    /// <param name="postTo">The address for parcels, or null.</param>
    /// <param name="writeTo">The address for mail, as <see cref="EmailAddress"/> reads it, or null.</param>
    public void Describe(string name, string? postTo, string? writeTo)
    {
        Name = name;
        PostTo = postTo;
        WriteTo = writeTo;
    }

    /// <summary>Settles who may come in, and from which age alone.</summary>
    /// <param name="signUpOpen">True when people may make a student's account without being invited.</param>
    /// <param name="consentAge">The age below which a guardian has to agree, in years.</param>
    public void Admit(bool signUpOpen, int consentAge)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(consentAge, People.ConsentAge.Lowest);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(consentAge, People.ConsentAge.Highest);
        SignUpOpen = signUpOpen;
        ConsentAge = consentAge;
    }

    /// <summary>Begins to count anew what teachers say of likely causes. It never goes back.</summary>
    /// <param name="since">From now on.</param>
    public void CountCausesAnew(DateTimeOffset since) => CausesCountSince = CausesCountSince is { } was && was > since ? was : since;

    /// <summary>Settles how long records are kept and what is said about it.</summary>
    /// <param name="years">Years after the last sign of life, 1 to <see cref="LongestKeepYears"/>.</param>
    /// <param name="contact">Whom to ask, or null.</param>
    /// <param name="words">The owner's own words in Markdown, or null.</param>
    public void Keep(int years, string? contact, string? words)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(years, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(years, LongestKeepYears);
        KeepYears = years;
        PrivacyContact = contact;
        PrivacyWords = words;
    }
}

namespace ReedClinic.Domain.People;

/// <summary>Which side of the studio's set age a student says they are on. No date of birth is asked or kept.</summary>
public enum AgeAnswer
{
    /// <summary>Old enough to decide for themselves.</summary>
    OldEnough,

    /// <summary>Younger: a guardian has to agree.</summary>
    Younger,
}

/// <summary>Where a guardian's answer stands.</summary>
public enum Consent
{
    /// <summary>Nobody was asked.</summary>
    NotAsked,

    /// <summary>A guardian was asked and hasn't answered.</summary>
    Asked,

    /// <summary>A guardian agreed.</summary>
    Given,

    /// <summary>A guardian agreed once and took it back.</summary>
    Withdrawn,

    /// <summary>The guardian who was asked last said no. Whoever is asked anew may answer otherwise.</summary>
    Declined,
}

/// <summary>The age below which a guardian has to agree.</summary>
/// <remarks>
/// Where the law sets it differs: 16 in Regulation (EU) 2016/679, Article 8, which lets a member state go down to 13; 13 in
/// the rule for online services in the United States (16 CFR part 312). The studio sets its own and follows local law.
/// </remarks>
public static class ConsentAge
{
    /// <summary>Until the studio has set one.</summary>
    public const int Usual = 16;

    /// <summary>The lowest that can be set, in years.</summary>
    public const int Lowest = 13;

    /// <summary>The highest that can be set, in years.</summary>
    public const int Highest = 21;
}

/// <summary>A guardian and their answer for one student.</summary>
public sealed class Guardianship
{
    // For the database, which sets every property.
    private Guardianship()
    {
    }

    /// <summary>Asks a guardian.</summary>
    /// <param name="id">Which.</param>
    /// <param name="student">For whom.</param>
    /// <param name="name">What the guardian is called, as <see cref="PersonName.Read"/> gives it.</param>
    /// <param name="email">Where mail reaches them, as <see cref="EmailAddress.Read"/> gives it.</param>
    /// <param name="askedAt">When.</param>
    public Guardianship(GuardianshipId id, StudentId student, string name, string email, DateTimeOffset askedAt)
    {
        Id = id;
        Student = student;
        Ask(name, email, askedAt);
    }

    /// <summary>Which one.</summary>
    public GuardianshipId Id { get; private set; }

    /// <summary>For whom.</summary>
    public StudentId Student { get; private set; }

    /// <summary>What the guardian is called.</summary>
    public string Name { get; private set; } = "";

    /// <summary>Where mail reaches them.</summary>
    public string Email { get; private set; } = "";

    /// <summary>The address as it is compared.</summary>
    public string FoldedEmail { get; private set; } = "";

    /// <summary>The guardian's sign-in, once they have answered.</summary>
    public AccountId? Account { get; private set; }

    /// <summary>When they were asked last.</summary>
    public DateTimeOffset AskedAt { get; private set; }

    /// <summary>When they agreed.</summary>
    public DateTimeOffset? GivenAt { get; private set; }

    /// <summary>When they said no to what was asked last.</summary>
    public DateTimeOffset? DeclinedAt { get; private set; }

    /// <summary>When they took it back.</summary>
    public DateTimeOffset? WithdrawnAt { get; private set; }

    /// <summary>Since when nobody has to answer for the student, who is old enough after all; null while somebody has to.</summary>
    public DateTimeOffset? EndedAt { get; private set; }

    /// <summary>Changes with every save.</summary>
    public Guid Version { get; private set; }

    /// <summary>Where the answer stands.</summary>
    public Consent Stands => (GivenAt, WithdrawnAt) switch
    {
        (_, not null) => Consent.Withdrawn,
        (not null, _) => Consent.Given,
        _ => DeclinedAt is null ? Consent.Asked : Consent.Declined,
    };

    /// <summary>Asks again, perhaps somebody else. What was answered before no longer counts.</summary>
    /// <param name="name">What the guardian is called.</param>
    /// <param name="email">Where mail reaches them.</param>
    /// <param name="now">When.</param>
    public void Ask(string name, string email, DateTimeOffset now)
    {
        Name = name;
        WriteTo(email);
        AskedAt = now;
        Account = null;
        GivenAt = DeclinedAt = WithdrawnAt = EndedAt = null;
    }

    /// <summary>Follows the guardian to another address.</summary>
    /// <param name="email">Where mail reaches them.</param>
    public void WriteTo(string email)
    {
        Email = email;
        FoldedEmail = Folding.OfEmail(email);
    }

    /// <summary>Calls the guardian something else.</summary>
    /// <param name="name">As <see cref="PersonName.Read"/> gives it.</param>
    public void Rename(string name)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        Name = name;
    }

    /// <summary>The guardian says no to what was asked. It needs no sign-in, and gives none.</summary>
    /// <param name="now">When.</param>
    public void Decline(DateTimeOffset now) => DeclinedAt ??= now;

    /// <summary>The guardian agrees.</summary>
    /// <param name="account">Their sign-in.</param>
    /// <param name="now">When.</param>
    public void Give(AccountId account, DateTimeOffset now)
    {
        Account = account;
        GivenAt = now;
        WithdrawnAt = null;
    }

    /// <summary>The guardian takes it back.</summary>
    /// <param name="now">When.</param>
    public void Withdraw(DateTimeOffset now) => WithdrawnAt ??= now;

    /// <summary>
    /// Follows a student's age. For one who is old enough nobody answers any more; what was answered is kept, and counts again
    /// when that turns out to be a mistake: else it would be a way past a guardian who took their consent back.
    /// </summary>
    /// <param name="age">The student's age.</param>
    /// <param name="now">When.</param>
    public void Follow(AgeAnswer age, DateTimeOffset now) => EndedAt = age is AgeAnswer.OldEnough ? EndedAt ?? now : null;
}
